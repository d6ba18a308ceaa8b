/** Brings what a sentence speaks of into sight and takes hold of it. */
import type { Layout, Place } from '../../core/part/layoutTypes';
import type { Pick } from '../../drawing/entities';
import { bench, choose, goTo, showPart } from '../../store/bench';
import { ringPlace } from '../canvas/ringPlace';
import { screen } from '../screen';

function pickOf(layout: Layout, { leg, what, cutout }: Place): Pick | null {
  const held = layout.part.legs[leg];
  if (!held) return null;
  if (what !== 'cutout') return { kind: what, leg: held.id };
  const opening = held.cutouts[cutout ?? -1];
  return opening ? { kind: 'cutout', leg: held.id, cutout: opening.id } : { kind: 'leg', leg: held.id };
}

const afterPaint = (then: () => void): void => {
  requestAnimationFrame(() => requestAnimationFrame(then));
};

/** Chooses a place of the part in view and rings it for a while. */
export function showPlace(layout: Layout, place: Place): void {
  const pick = pickOf(layout, place);
  if (!pick) return;
  goTo('parts');
  choose(pick);
  afterPaint(() => {
    document.querySelector('#drawings')?.scrollIntoView({ block: 'nearest' });
    ringPlace(pick);
  });
}

/** What of a part a field belongs to. */
export function pickOfField(field: string): { readonly part: string; readonly pick: Pick | null } | null {
  const [head, part, legs, leg, group, cutout] = field.split('.');
  if (head !== 'parts' || part === undefined) return null;
  if (legs !== 'legs' || leg === undefined) return { part, pick: null };
  if (group === 'bend') return { part, pick: { kind: 'bend', leg } };
  if (group === 'cutouts' && cutout !== undefined) return { part, pick: { kind: 'cutout', leg, cutout } };
  return { part, pick: { kind: 'leg', leg } };
}

/** The line on which a field is typed or, where it has none of its own, one that lies next to it in the job. */
function lineOf(field: string): HTMLElement | null {
  for (let path = field; path.includes('.') || path === field; path = path.slice(0, path.lastIndexOf('.'))) {
    const own = document.querySelector<HTMLElement>(`main [data-field="${CSS.escape(path)}"]`) ?? document.querySelector<HTMLElement>(`main [data-field^="${CSS.escape(path)}."]`);
    if (own) return own;
    if (!path.includes('.')) break;
  }
  return null;
}

/** Opens a field wherever it stands: on the card, or in the stock room. */
export function showField(field: string): void {
  const place = pickOfField(field);
  if (place) {
    if (bench.getState().part !== place.part) showPart(place.part);
    goTo('parts');
    choose(place.pick);
  } else {
    const [head, id] = field.split('.');
    if (head === 'stocks' && id !== undefined) screen.setState({ stock: id });
    goTo(head === 'dxf' ? 'files' : 'stock');
  }
  afterPaint(() => {
    const line = lineOf(field);
    line?.scrollIntoView({ block: 'nearest' });
    line?.focus();
  });
}
