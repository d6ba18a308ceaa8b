import { useScreen } from '../screen';

/** What is read out and not shown: undo, copies, deletions, files saved. */
export function LiveLine() {
  const said = useScreen((state) => state.said);
  return (
    <div className="unseen" role="status" aria-live="polite">
      {said}
    </div>
  );
}
