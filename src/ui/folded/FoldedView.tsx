/** The bent part, to be turned by hand and bent bend by bend. Loaded when it is needed: three.js stays out of the first load. */
import { useCallback, useEffect, useId, useMemo, useRef, useState } from 'react';
import type { KeyboardEvent } from 'react';
import { fold } from '../../core/part/fold';
import type { Layout } from '../../core/part/layoutTypes';
import type { Pick } from '../../drawing/entities';
import { allDegrees, bentAfter, stageInWords } from './bendProgress';
import { foldedColours } from './colours';
import type { Metal } from './colours';
import { FoldedScene } from './FoldedScene';
import { turnByHand } from './turnByHand';
import './folded.css';

export interface FoldedViewProps {
  /** Id and name of the part: another id is another part, shown finished and fitted afresh. */
  readonly part: string;
  readonly name: string;
  /** The part, or its last good shape. */
  readonly layout: Layout | undefined;
  /** Whether the layout is the last good shape and not what is typed. */
  readonly stale: boolean;
  readonly metal: Metal;
  /** Whether the screen is set for a dim workshop. */
  readonly dim: boolean;
  readonly chosen: Pick | null;
  readonly onPick: (pick: Pick | null) => void;
}

/** px that one press of an arrow key turns the part, as a drag would: about 7°. */
const KEY_TURN_PX = 20;
const KEY_ZOOM = 1.25;

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

function description(name: string, layout: Layout): string {
  const bends = layout.legs.filter((leg) => leg.bend).length;
  return `${name} bent: ${counted(layout.legs.length, 'leg')}, ${counted(bends, 'bend')}`;
}

/** One press of a key on the view. @returns whether the key means something here */
function pressKey(scene: FoldedScene, key: string): boolean {
  switch (key) {
    case 'ArrowLeft': scene.turn(-KEY_TURN_PX, 0); return true;
    case 'ArrowRight': scene.turn(KEY_TURN_PX, 0); return true;
    case 'ArrowUp': scene.turn(0, -KEY_TURN_PX); return true;
    case 'ArrowDown': scene.turn(0, KEY_TURN_PX); return true;
    case '+': case '=': scene.zoom(KEY_ZOOM); return true;
    case '-': scene.zoom(1 / KEY_ZOOM); return true;
    case 'Home': scene.setView('section'); return true;
    default: return false;
  }
}

/** Upright as in the section; once it stands so, back to the first look from above. */
const standUp = (scene: FoldedScene | undefined): void => scene?.setView(scene.standsAsInSection ? 'first' : 'section');

export default function FoldedView({ part, name, layout, stale, metal, dim, chosen, onPick }: FoldedViewProps) {
  const [scene, setScene] = useState<FoldedScene>();
  const [hasWebGL, setHasWebGL] = useState(true);
  const picked = useRef(onPick);
  /** Degrees bent so far, of this part; none while it is finished, so that it stays finished when its angles change. */
  const [bending, setBending] = useState<{ readonly part: string; readonly degrees: number }>();
  const slider = useId();

  useEffect(() => {
    picked.current = onPick;
  }, [onPick]);

  const hold = useCallback((element: HTMLDivElement) => {
    // A canvas of its own for each scene: a context once given back cannot be had again from the same canvas.
    const canvas = document.createElement('canvas');
    let made: FoldedScene;
    try {
      made = new FoldedScene(canvas);
    } catch {
      setHasWebGL(false);
      return undefined;
    }
    element.append(canvas);
    const watch = new ResizeObserver(([entry]) => entry && made.resize(entry.contentRect.width, entry.contentRect.height));
    watch.observe(element);
    const stop = turnByHand(element, {
      turn: (dx, dy) => made.turn(dx, dy),
      slide: (dx, dy) => made.slide(dx, dy),
      zoom: (factor, x, y) => made.zoom(factor, x, y),
      tap: (x, y) => picked.current(made.pick(x, y) ?? null),
      doubleTap: () => standUp(made),
    });
    setScene(made);
    return () => {
      stop();
      watch.disconnect();
      made.dispose();
      canvas.remove();
      setScene(undefined);
    };
  }, []);

  const all = layout ? allDegrees(layout) : 0;
  const degrees = bending?.part === part ? Math.min(bending.degrees, all) : all;
  const folded = useMemo(() => layout && fold(layout, bentAfter(layout, degrees)), [layout, degrees]);
  const colours = useMemo(() => foldedColours(metal, dim), [metal, dim]);

  useEffect(() => {
    if (scene && layout && folded) scene.show(layout, folded, { part, colours, chosen, stale });
  }, [scene, layout, folded, part, colours, chosen, stale]);

  const onKeyDown = (event: KeyboardEvent): void => {
    if (scene && !event.ctrlKey && !event.metaKey && !event.altKey && pressKey(scene, event.key)) event.preventDefault();
  };

  const stage = layout ? stageInWords(layout, degrees) : '';
  const last = Math.ceil(all);
  return (
    <section className="folded" aria-label="Folded">
      <div className="folded-caption">
        <h2>Folded</h2>
        {hasWebGL && <p>{stale ? 'The last shape that could be bent.' : 'Drag to turn it.'}</p>}
        {hasWebGL && layout && <button type="button" onClick={() => standUp(scene)}>Stand it up</button>}
      </div>
      {hasWebGL ? (
        // A picture that can be turned: what a drag does the arrow keys do, so it takes the focus. No tag stands for that.
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
        <div
          ref={hold}
          className="folded-stage"
          hidden={!layout}
          // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role
          role="img"
          aria-label={layout ? description(name, layout) : name}
          aria-keyshortcuts="ArrowLeft ArrowRight ArrowUp ArrowDown + - Home"
          // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
          tabIndex={0}
          onKeyDown={onKeyDown}
        />
      ) : (
        <p className="folded-sentence">This browser cannot draw the bent part, for it has no WebGL. Section and blank show the same part.</p>
      )}
      {!layout && <p className="folded-sentence">Nothing to bend yet. The part shows here once its sizes work out.</p>}
      {hasWebGL && layout && all > 0 && (
        <div className="folded-bending">
          <label htmlFor={slider}>Bend</label>
          <input
            id={slider}
            type="range"
            min={0}
            max={last}
            step={1}
            value={Math.min(Math.ceil(degrees), last)}
            aria-valuetext={stage}
            onChange={(event) => {
              const value = event.target.valueAsNumber;
              setBending(value >= last ? undefined : { part, degrees: value });
            }}
          />
          <output htmlFor={slider}>{stage}</output>
        </div>
      )}
    </section>
  );
}
