import { say } from '../screen';

interface DoesProps {
  readonly words: string;
  /** For a screen reader, where the words lean on what stands beside them. */
  readonly label?: string;
  readonly run: () => void;
  /** True, or why not. */
  readonly can?: true | string;
}

/** A word that changes the job. One that cannot now stays in its place and says why. */
export function Does({ words, label, run, can = true }: DoesProps) {
  return (
    <button
      type="button"
      className="link"
      aria-label={label}
      aria-disabled={can !== true}
      title={can === true ? undefined : can}
      onClick={() => (can === true ? run() : say(can))}
    >
      {words}
    </button>
  );
}
