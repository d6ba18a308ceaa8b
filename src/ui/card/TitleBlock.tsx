import { EntryField } from '../fields/EntryField';
import { TextField } from '../form/TextField';
import type { ThePart } from './useThePart';

export function TitleBlock({ job, part }: ThePart) {
  const name = part.name.trim() || 'Part';
  const place = `Part ${job.parts.indexOf(part) + 1} of ${job.parts.length}`;
  return (
    <section className="title-block" aria-label="Title block">
      <div>
        <small>{place}</small>
        <h1 className="unseen">{name}</h1>
        <TextField field={`parts.${part.id}.name`} label="Name of the part" className="part-name" placeholder="Part" />
      </div>
      <div>
        <small aria-hidden="true">Off</small>
        <EntryField key={part.id} field={`parts.${part.id}.quantity`} wanted="count" label={`${name}, number off`} className="part-off" />
      </div>
    </section>
  );
}
