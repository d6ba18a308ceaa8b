/** Ways to put a job on the bench. Each can be taken back by undo. */
import { exampleJob } from '../../job/exampleJob';
import { LONGEST_FILE } from '../../job/limits';
import { bench, freshBench, goTo, putOnBench, showPart } from '../../store/bench';
import { say, screen, setOutcome } from '../screen';

/** The example opens on its second part, the strap: it has bends, holes and something to look at. */
export const SHOWN_FIRST = 'strap';

/** The finished example, on a bench that has nothing on it yet. */
export function openExample(): void {
  const { trouble } = bench.getState();
  bench.setState({ ...freshBench(exampleJob), trouble });
  showPart(SHOWN_FIRST);
}

/** The text of a file, or why it could not be had. */
async function textOf(file: File): Promise<{ readonly text: string } | { readonly says: string }> {
  if (file.size > LONGEST_FILE) return { says: 'This file is too large to be a job. Choose one saved by Bendwright.' };
  try {
    return { text: await file.text() };
  } catch {
    return { says: 'The browser could not read this file. Look whether it is still there, and choose it again.' };
  }
}

/** Opens a job file. The job on the bench stays untouched where the file has a fault; its faults are told in the files room. */
export async function openFile(file: File): Promise<void> {
  const read = await textOf(file);
  const { openJob } = await import('../../job/openJob');
  const opened = 'says' in read ? { ok: false as const, faults: [{ where: 'the file', says: read.says }] } : openJob(read.text);
  if (opened.ok) {
    putOnBench(opened.job, `opening ${file.name}`);
    screen.setState({ refused: null, newPartOpen: false });
    setOutcome({ good: true, lines: [`Opened ${file.name}. Undo brings the job before it back.`, ...opened.notes] });
  } else {
    screen.setState({ refused: { name: file.name, faults: opened.faults } });
    goTo('files');
    say(`${file.name} was not opened.`);
  }
}

/** A file dropped anywhere is opened; without this the browser would leave the page for it. @returns stops it */
export function openDroppedFiles(): () => void {
  const over = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  };
  const drop = (event: DragEvent): void => {
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    void openFile(file);
  };
  addEventListener('dragover', over);
  addEventListener('drop', drop);
  return () => {
    removeEventListener('dragover', over);
    removeEventListener('drop', drop);
  };
}
