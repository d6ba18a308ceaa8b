/** The bent part on a canvas. It is drawn when something changes, once a frame at most, and rests otherwise. */
import { Matrix4, OrthographicCamera, Raycaster, Scene, Vector3, WebGLRenderer } from 'three';
import { inSpace, vector } from '../../core/geometry/frame';
import { pathBounds } from '../../core/geometry/bounds';
import type { Vector3 as Point3 } from '../../core/geometry/types';
import type { Folded, FoldedBend, Layout, LegLayout } from '../../core/part/layoutTypes';
import type { Pick } from '../../drawing/entities';
import { bendMesh, sameBend } from './bendMesh';
import type { FoldedColours } from './colours';
import { legMesh, sameSolid } from './legMesh';
import type { LegMesh } from './legMesh';
import { LineSet } from './LineSet';
import { Palette } from './Palette';
import { pickFolded } from './pickFolded';
import type { Hit } from './pickFolded';
import { Piece } from './Piece';
import { bendSilhouette, legSilhouette } from './silhouette';
import { axes, FIRST_ANGLES, fitted, isInView, SECTION_ANGLES, slid, turned, underScreen, zoomed } from './view';
import type { Size, View } from './view';

/** More device pixels than this for one px cost time and show nothing. */
const FINEST_PIXELS = 2;

export interface Look {
  /** Another id is another part: it is fitted to the screen afresh. */
  readonly part: string;
  readonly colours: FoldedColours;
  readonly chosen: Pick | null;
  /** The shape is the last good one and not what is typed: drawn in dashes. */
  readonly stale: boolean;
}

interface Shown {
  readonly layout: Layout;
  readonly folded: Folded;
  readonly look: Look;
  /** Corners of everything, in the part's space. */
  readonly points: readonly Point3[];
}

interface LegPiece {
  readonly layout: LegLayout;
  readonly solid: LegMesh;
  readonly piece: Piece;
}

interface BendPiece {
  readonly bend: FoldedBend;
  readonly thickness: number;
  readonly piece: Piece;
}

const corners = (leg: LegLayout, thickness: number): Point3[] => {
  const { minX, minY, maxX, maxY } = pathBounds(leg.plan);
  return [minX, maxX].flatMap((x) => [minY, maxY].flatMap((y) => [0, -thickness].map((z) => vector(x, y, z))));
};

const cutoutIndex = (layout: Layout, leg: number, chosen: Pick | null): number | undefined => {
  const found = layout.part.legs[leg];
  if (chosen?.kind !== 'cutout' || found?.id !== chosen.leg) return undefined;
  const index = found.cutouts.findIndex((c) => c.id === chosen.cutout);
  return index < 0 ? undefined : index;
};

export class FoldedScene {
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new OrthographicCamera();
  private readonly palette = new Palette();
  private readonly inkTurns = new LineSet(this.palette.ink);
  private readonly blueTurns = new LineSet(this.palette.blue);
  private legs: LegPiece[] = [];
  private bends: BendPiece[] = [];
  private shown: Shown | undefined;
  private size: Size = { width: 1, height: 1 };
  private view: View = fitted(FIRST_ANGLES, this.size, []);
  /** Whether the scale and the middle are the user's own, not ours to change. */
  private isHeld = false;
  private frame: number | undefined;
  private readonly drawAgain = (): void => this.ask();

  /** Throws where the browser gives no WebGL; the caller says so in its place. */
  constructor(private readonly canvas: HTMLCanvasElement) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
    // The depth of each pixel orders everything; sorting would only measure every piece first.
    this.renderer.sortObjects = false;
    this.camera.matrixAutoUpdate = false;
    this.scene.matrixAutoUpdate = false;
    this.scene.add(this.inkTurns.object, this.blueTurns.object);
    canvas.addEventListener('webglcontextrestored', this.drawAgain);
  }

  /** Puts a part on show. Legs and bends that are as they were keep their solids and are only moved. */
  show(layout: Layout, folded: Folded, look: Look): void {
    const before = this.shown;
    const { thickness } = layout.part;
    this.palette.take(look.colours, look.stale);
    const points = layout.legs.flatMap((leg, i) => {
      const frame = folded.legs[i];
      return frame ? corners(leg, thickness).map((p) => inSpace(frame, p)) : [];
    });
    this.shown = { layout, folded, look, points };

    const legs = layout.legs.flatMap((leg, i): LegPiece[] => {
      const frame = folded.legs[i];
      if (!frame) return [];
      const isChosen = look.chosen?.kind === 'leg' && look.chosen.leg === layout.part.legs[i]?.id;
      const materials = this.palette.forLeg(frame, isChosen, cutoutIndex(layout, i, look.chosen));
      const kept = this.legs[i];
      const entry = kept && kept.solid.thickness === thickness && sameSolid(kept.layout, leg) ? { ...kept, layout: leg } : undefined;
      const solid = entry?.solid ?? legMesh(leg.plan, leg.cutouts, thickness);
      const made = entry ?? { layout: leg, solid, piece: new Piece(solid, materials) };
      if (entry) entry.piece.paint(materials);
      made.piece.moveTo(frame);
      return [made];
    });
    const bends = folded.bends.map((bend, i): BendPiece => {
      const isChosen = look.chosen?.kind === 'bend' && look.chosen.leg === layout.part.legs[bend.leg]?.id;
      const materials = this.palette.forBend(bend, isChosen);
      const kept = this.bends[i];
      const isKept = kept && kept.thickness === thickness && sameBend(kept.bend, bend);
      const piece = isKept ? kept.piece : new Piece(bendMesh(bend, thickness), materials);
      if (isKept) piece.paint(materials);
      piece.moveTo(bend.frame);
      return { bend, thickness, piece };
    });
    this.exchange(this.legs, legs);
    this.exchange(this.bends, bends);
    this.legs = legs;
    this.bends = bends;

    if (before?.look.part !== look.part) this.setView('first');
    else if (!this.isHeld && !isInView(this.view, this.size, points)) this.fit(this.view);
    this.ask();
  }

  private exchange(before: readonly { piece: Piece }[], after: readonly { piece: Piece }[]): void {
    const staying = new Set(after.map((entry) => entry.piece));
    for (const { piece } of before) if (!staying.has(piece)) piece.dispose();
    for (const piece of staying) if (!piece.mesh.parent) this.scene.add(piece.mesh);
  }

  private fit(angles: { readonly around: number; readonly above: number }): void {
    this.view = fitted(angles, this.size, this.shown?.points ?? []);
    this.isHeld = false;
  }

  /** Fits the part to the screen: from above and the near side, or square on to the near edge as in the section. */
  setView(from: 'first' | 'section'): void {
    this.fit(from === 'section' ? SECTION_ANGLES : FIRST_ANGLES);
    this.ask();
  }

  get standsAsInSection(): boolean {
    return this.view.around === SECTION_ANGLES.around && this.view.above === SECTION_ANGLES.above;
  }

  /** px of a drag. */
  turn(dx: number, dy: number): void {
    this.view = turned(this.view, dx, dy);
    this.ask();
  }

  /** px of a drag. */
  slide(dx: number, dy: number): void {
    this.view = slid(this.view, dx, dy);
    this.isHeld = true;
    this.ask();
  }

  /** Brings it nearer by a factor about a point of the canvas, px; about its middle if none is given. */
  zoom(factor: number, x = this.size.width / 2, y = this.size.height / 2): void {
    this.view = zoomed(this.view, this.size, factor, x, y);
    this.isHeld = true;
    this.ask();
  }

  /** px. A view that the user has not moved is fitted again. */
  resize(width: number, height: number): void {
    if (width < 1 || height < 1) return;
    this.size = { width, height };
    this.renderer.setPixelRatio(Math.min(window.devicePixelRatio, FINEST_PIXELS));
    this.renderer.setSize(width, height, false);
    if (!this.isHeld) this.fit(this.view);
    // Setting the size wipes the canvas: drawn at once, it does not blink.
    this.draw();
  }

  /** What a tap at a point of the canvas (px) takes hold of. */
  pick(x: number, y: number): Pick | undefined {
    if (!this.shown) return undefined;
    const { layout, folded } = this.shown;
    return pickFolded(layout, folded, this.view, this.size, x, y, this.metalUnder(x, y));
  }

  private metalUnder(x: number, y: number): Hit | undefined {
    const { towards } = axes(this.view);
    const from = underScreen(this.view, this.size, x, y);
    const reach = this.reach();
    const eye = new Vector3(from.x + towards.x * reach, from.y + towards.y * reach, from.z + towards.z * reach);
    const ray = new Raycaster(eye, new Vector3(-towards.x, -towards.y, -towards.z));
    const pieces = [
      ...this.legs.map(({ piece }, leg) => ({ kind: 'leg' as const, leg, piece })),
      ...this.bends.map(({ piece, bend }) => ({ kind: 'bend' as const, leg: bend.leg, piece })),
    ];
    const first = ray.intersectObjects(pieces.map((p) => p.piece.mesh), false)[0];
    const struck = first && pieces.find((p) => p.piece.mesh === first.object);
    return struck && { kind: struck.kind, leg: struck.leg, depth: reach - first.distance };
  }

  /** mm from the view's middle within which all of the part lies. */
  private reach(): number {
    const m = this.view.middle;
    const farthest = (this.shown?.points ?? []).reduce((far, p) => Math.max(far, Math.hypot(p.x - m.x, p.y - m.y, p.z - m.z)), 0);
    // Bends bulge past the corners of the legs, by less than their legs' own spread in any part that can be made.
    return farthest * 1.5 + 10;
  }

  private ask(): void {
    this.frame ??= requestAnimationFrame(() => this.draw());
  }

  private draw(): void {
    if (this.frame !== undefined) cancelAnimationFrame(this.frame);
    this.frame = undefined;
    if (!this.shown) return;
    const { view, size, camera } = this;
    const { right, up, towards } = axes(view);
    const reach = this.reach();
    const [halfWidth, halfHeight] = [size.width / 2 / view.scale, size.height / 2 / view.scale];
    Object.assign(camera, { left: -halfWidth, right: halfWidth, top: halfHeight, bottom: -halfHeight, near: 0, far: 2 * reach });
    camera.updateProjectionMatrix();
    const v = (p: Point3): Vector3 => new Vector3(p.x, p.y, p.z);
    camera.matrix.copy(new Matrix4().makeBasis(v(right), v(up), v(towards)));
    camera.matrix.setPosition(v(view.middle).addScaledVector(v(towards), reach));
    camera.updateMatrixWorld(true);
    this.palette.setScale(view.scale);
    this.drawTurns(this.shown, towards);
    this.renderer.render(this.scene, camera);
  }

  private drawTurns({ layout, folded, look }: Shown, towards: Point3): void {
    const [ink, blue]: [number[], number[]] = [[], []];
    // A stale shape is all dashes; these lines, made anew for each view, have none and are left out.
    if (look.stale) {
      this.inkTurns.put([]);
      this.blueTurns.put([]);
      return;
    }
    const lines = (kind: Pick['kind'], leg: number): number[] =>
      look.chosen?.kind === kind && look.chosen.leg === layout.part.legs[leg]?.id ? blue : ink;
    this.legs.forEach(({ solid }, i) => {
      const frame = folded.legs[i];
      if (frame) lines('leg', i).push(...legSilhouette(frame, solid.rounds, solid.thickness, towards));
    });
    for (const { bend, thickness } of this.bends) lines('bend', bend.leg).push(...bendSilhouette(bend, thickness, towards));
    this.inkTurns.put(ink);
    this.blueTurns.put(blue);
  }

  dispose(): void {
    if (this.frame !== undefined) cancelAnimationFrame(this.frame);
    this.canvas.removeEventListener('webglcontextrestored', this.drawAgain);
    for (const { piece } of [...this.legs, ...this.bends]) piece.dispose();
    this.inkTurns.dispose();
    this.blueTurns.dispose();
    this.palette.dispose();
    this.renderer.dispose();
    // Browsers keep few contexts: this one is given back now, not when the canvas is swept up.
    this.renderer.forceContextLoss();
  }
}
