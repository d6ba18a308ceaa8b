import { useBench } from '../../store/bench';
import { partOf } from '../../store/derived';
import type { Job, JobPart } from '../../job/schema';
import type { WorkedOut } from '../../job/workOut';

export interface ThePart {
  readonly job: Job;
  readonly part: JobPart;
  readonly worked: WorkedOut;
}

/** The part in view with all that follows from it; undefined only for a job without parts, which the schema refuses. */
export function useThePart(): ThePart | undefined {
  const job = useBench((state) => state.job);
  const id = useBench((state) => state.part);
  const part = job.parts.find((each) => each.id === id);
  return part && { job, part, worked: partOf(job, id) };
}
