import type { Job } from '../../job/schema';
import { showPart } from '../../store/bench';
import { partOf } from '../../store/derived';
import { partStatus } from '../tabs/partStatus';
import { downloadAll, downloadDxf, downloadSvg } from './downloads';

/** The files for the cutter, part by part. */
export function PartFiles({ job }: { readonly job: Job }) {
  return (
    <section className="room-area" aria-label="Files for the cutter">
      <div className="room-head">
        <h2 className="area-title">Files for the cutter</h2>
        <p className="quiet">A part with something to put right does not go out.</p>
        <div className="links">
          <button type="button" className="link" onClick={() => void downloadAll()}>
            All parts as DXF
          </button>
        </div>
      </div>
      <table className="plain-table part-files">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Stands</th>
            <th scope="col" className="num">
              Off
            </th>
            <th scope="col">
              <span className="unseen">Files</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {job.parts.map((part, i) => {
            const worked = partOf(job, part.id);
            const { level, words } = partStatus(worked);
            const name = part.name.trim() || 'Part';
            return (
              <tr key={part.id}>
                <td>
                  <button type="button" className="link" onClick={() => showPart(part.id)}>
                    {i + 1} {name}
                  </button>
                </td>
                <td className={`stands ${level}`}>{words}</td>
                <td className="num stands">{worked.resolved.quantity ?? ''}</td>
                <td className="does">
                  <button type="button" className="link" aria-label={`DXF of ${name}`} onClick={() => void downloadDxf(part.id)}>
                    DXF
                  </button>{' '}
                  <button type="button" className="link" aria-label={`SVG of ${name}`} onClick={() => void downloadSvg(part.id)}>
                    SVG
                  </button>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
