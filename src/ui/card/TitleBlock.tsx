import { mainRun } from '../../job/edit/tree';
import type { JobPart } from '../../job/schema';
import { EntryField } from '../fields/EntryField';
import { useEntry } from '../fields/fieldReading';
import { TextField } from '../form/TextField';
import type { ThePart } from './useThePart';

/** Fields of the width of every leg of the main run, where all are typed alike; the first stands for all. */
function widthFields(part: JobPart): readonly string[] | undefined {
  const run = mainRun(part.legs);
  const alike = new Set(run.flatMap((leg) => [leg.startWidth, leg.endWidth]));
  return alike.size === 1 ? run.flatMap(({ id }) => ['startWidth', 'endWidth'].map((end) => `parts.${part.id}.legs.${id}.${end}`)) : undefined;
}

export function TitleBlock({ job, part }: ThePart) {
  const name = part.name.trim() || 'Part';
  const place = `Part ${job.parts.indexOf(part) + 1} of ${job.parts.length}`;
  const off = `parts.${part.id}.quantity`;
  const [first, ...rest] = widthFields(part) ?? [];
  return (
    <section className="title-block" aria-label="Title block">
      <div>
        <small>{place}</small>
        <h1 className="unseen">{name}</h1>
        <TextField field={`parts.${part.id}.name`} label="Name of the part" className="part-name" placeholder="Part" />
      </div>
      <div>
        <small aria-hidden="true">Width</small>
        {first === undefined ? (
          <p className="part-varies">varies</p>
        ) : (
          <EntryField key={first} field={first} also={rest} wanted="length" label={`${name}, width of every leg`} className="part-off" saysAt="width-says" />
        )}
      </div>
      <div>
        <small aria-hidden="true">Off</small>
        <EntryField key={part.id} field={off} wanted="count" label={`${name}, number off`} className="part-off" saysAt="off-says" />
      </div>
      {first !== undefined && <Says id="width-says" field={first} />}
      <Says id="off-says" field={off} />
    </section>
  );
}

/** The sentence of a narrow field, across the whole block. */
function Says({ id, field }: { readonly id: string; readonly field: string }) {
  const { says } = useEntry(field);
  if (says === undefined) return null;
  return (
    <p id={id} className="title-says">
      {says}
    </p>
  );
}
