import type { JobPattern } from '../../job/schema';
import { EntryField } from '../fields/EntryField';
import { FieldChoice } from '../form/FieldChoice';
import { Row } from '../form/Row';

const DIRECTIONS = [
  ['along', 'along the leg'],
  ['across', 'across the leg'],
] as const;

interface PatternRowsProps {
  readonly path: string;
  readonly title: string;
  readonly pattern: JobPattern;
}

/** How many, and how far apart. */
export function PatternRows({ path, title, pattern }: PatternRowsProps) {
  const line = (name: string, key: string, wanted: 'count' | 'length', words: string) => (
    <Row name={name}>
      <EntryField key={key} field={`${path}.${key}`} wanted={wanted} label={`${title}, ${words}`} />
    </Row>
  );
  if (pattern.kind === 'single') return null;
  if (pattern.kind === 'row') {
    return (
      <>
        <Row name="Runs" wide>
          <FieldChoice field={`${path}.direction`} label={`${title}, row runs`} options={DIRECTIONS} />
        </Row>
        {line('How many', 'count', 'count', 'how many')}
        {line('Apart', 'pitch', 'length', 'pitch')}
      </>
    );
  }
  return (
    <>
      {line('Along', 'alongCount', 'count', 'how many along')}
      {line('Apart', 'alongPitch', 'length', 'pitch along')}
      {line('Across', 'acrossCount', 'count', 'how many across')}
      {line('Apart', 'acrossPitch', 'length', 'pitch across')}
    </>
  );
}
