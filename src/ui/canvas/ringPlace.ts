import type { Pick } from '../../drawing/entities';
import { choose } from '../../store/bench';
import { view } from './view';

/** How long a place stays ringed, ms (guide, "Look at this"). */
const RING_MS = 2000;

let turn = 0;

/** "Show me": chooses a thing, scrolls it into view and rings it for two seconds, in every figure that shows it. */
export function ringPlace(pick: Pick): void {
  turn++;
  const mine = turn;
  choose(pick);
  view.setState({ ring: { pick, turn } });
  setTimeout(() => {
    if (view.getState().ring?.turn === mine) view.setState({ ring: null });
  }, RING_MS);
}
