import { fileName } from '../../export/fileName';
import { saveJob } from '../../job/saveJob';
import { bench } from '../../store/bench';
import { setOutcome } from '../screen';
import { download } from './download';

/** Saves the job on the bench to a file. */
export function saveJobToFile(): void {
  const { job } = bench.getState();
  const name = fileName({ part: job.name.trim() || 'Job' }, 'bendwright.json');
  download(name, saveJob(job), 'application/json');
  setOutcome({ good: true, lines: [`Saved the job as ${name}.`] });
}
