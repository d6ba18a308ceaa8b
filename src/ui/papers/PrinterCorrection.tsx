import { useId } from 'react';
import type { PaperCardProps } from './PaperCard';
import { NOT_MEASURED, paperSetting, type Bar } from './paperSetting';
import { SettingText } from './SettingText';

const DIRECTIONS: readonly (readonly [way: string, words: string, bars: readonly (readonly [Bar, string, string])[]])[] = [
  ['Across', 'across the page', [['xMm', 'mm', '100'], ['xIn', 'in', '4']]],
  ['Up', 'up the page', [['yMm', 'mm', '100'], ['yIn', 'in', '4']]],
];

const percent = (factor: number): string => `${(factor * 100).toFixed(2)} %`;

/** What the check bars measured, and how the next print is stretched for it. */
export function PrinterCorrection({ setting, wish, bars }: PaperCardProps) {
  const { inForce, measured } = setting;
  const { correction } = wish;
  const saysAt = useId();
  const corrected = correction.x !== 1 || correction.y !== 1;
  const before = inForce.x !== 1 || inForce.y !== 1;
  const typed = Object.values(measured).some((text) => text.trim() !== '');
  return (
    <section className="room-area" aria-label="Correction of the printer">
      <div className="room-head">
        <h2 className="area-title">What did the bars measure?</h2>
        {(corrected || typed) && (
          <div className="links">
            <button type="button" className="link" onClick={() => paperSetting.setState({ inForce: { x: 1, y: 1 }, measured: NOT_MEASURED })}>
              No correction
            </button>
          </div>
        )}
      </div>
      <table className="plain-table bars-measured">
        <thead>
          <tr>
            <th scope="col">Bar</th>
            <th scope="col">100 mm</th>
            <th scope="col">4 in</th>
          </tr>
        </thead>
        <tbody>
          {DIRECTIONS.map(([way, words, each]) => (
            <tr key={way}>
              <th scope="row">{way}</th>
              {each.map(([bar, unit, length]) => (
                <td key={bar}>
                  <SettingText
                    label={`The ${length} ${unit} bar ${words} measured, ${unit}`}
                    value={measured[bar]}
                    after={unit}
                    placeholder={unit === 'mm' ? '100.0' : '4.00'}
                    says={bars?.field === bar ? bars.says : undefined}
                    saysAt={saysAt}
                    onType={(text) => paperSetting.setState((now) => ({ measured: { ...now.measured, [bar]: text } }))}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {bars && (
        <p id={saysAt} className="bars-say">
          {bars.says}
        </p>
      )}
      <p className="quiet" aria-live="polite">
        {corrected ? `Printed at ${percent(correction.x)} across and ${percent(correction.y)} up, to come out true.` : 'No correction: printed as drawn.'}
        {before && !typed && ' Measured again? Type what the bars of that print came to.'}
      </p>
    </section>
  );
}
