import { useScreen } from '../screen';

/** What is read out and not shown: undo, copies, deletions, files saved. */
export function LiveLine() {
  const said = useScreen((state) => state.said);
  return (
    <output className="unseen" aria-live="polite">
      {said}
    </output>
  );
}
