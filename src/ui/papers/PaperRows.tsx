import { PAPER_SIZES, type PaperName } from '../../drawing/template/paperSizes';
import { Choice } from '../form/Choice';
import { Row } from '../form/Row';
import type { PaperCardProps } from './PaperCard';
import { paperSetting, type Turn } from './paperSetting';
import { SettingText } from './SettingText';

const PAPERS = (Object.keys(PAPER_SIZES) as PaperName[]).map((name) => [name, name] as const);

const TURNS: readonly (readonly [Turn, string])[] = [
  ['auto', 'fewest sheets'],
  ['upright', 'upright'],
  ['lying', 'lying'],
];

const FACES = [
  ['marked', 'marked face up'],
  ['other', 'other face up, mirrored'],
] as const;

const WRAP_FACES = [
  ['marked', 'round the marked face'],
  ['other', 'round the other face'],
] as const;

/** Paper, which way round, which face, and the room between what is on it. */
export function PaperRows({ setting, laid }: PaperCardProps) {
  const { kind, paper, turn, face, overlap, gap } = setting;
  const says = (field: string): string | undefined => (laid?.problem?.field === field ? laid.problem.says : undefined);
  const sheet = kind === 'sheet';
  return (
    <section className="room-area" aria-label="Paper">
      <h2 className="area-title">Paper</h2>
      <div className="rows">
        <Row name="Size">
          <Choice label="Size of the paper" value={paper} options={PAPERS} onChoose={(next) => paperSetting.setState({ paper: next })} />
        </Row>
        <Row name="Way">
          <Choice
            label="Which way the paper lies"
            value={sheet && turn === 'auto' ? 'lying' : turn}
            options={sheet ? TURNS.slice(1) : TURNS}
            onChoose={(next) => paperSetting.setState({ turn: next })}
          />
        </Row>
        {!sheet && (
          <>
            <Row name="Face" wide>
              <Choice label="Face" value={face} options={kind === 'wrap' ? WRAP_FACES : FACES} onChoose={(next) => paperSetting.setState({ face: next })} />
            </Row>
            <Row name="Overlap">
              <SettingText label="Overlap of tiles, mm" value={overlap} after="mm" says={says('overlap')} onType={(text) => paperSetting.setState({ overlap: text })} />
            </Row>
            <Row name="Gap">
              <SettingText label="Gap between parts, mm" value={gap} after="mm" says={says('gap')} onType={(text) => paperSetting.setState({ gap: text })} />
            </Row>
          </>
        )}
      </div>
      <p className="quiet">In the print window choose {paper}, 100 % and no fit to page.</p>
    </section>
  );
}
