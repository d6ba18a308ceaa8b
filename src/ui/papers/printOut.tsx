/** The pages as the browser prints them: each at its true size on a sheet of its own, and nothing of the screen. */
import { useEffect, useState } from 'react';
import { createPortal, flushSync } from 'react-dom';
import type { Page } from '../../drawing/page';
import { writePageSvg } from '../../export/svg/writePageSvg';
import './printOut.css';

/** `paper-210-297`: a name for each size, by which the style sheet gives each sheet its own paper. */
const paperName = ({ width, height }: Page): string => `paper-${`${width}-${height}`.replaceAll('.', '_')}`;

const paperRules = (pages: readonly Page[]): string =>
  [...new Map(pages.map((page) => [paperName(page), page]))].map(([name, { width, height }]) => `@page ${name} { size: ${width}mm ${height}mm; margin: 0; }`).join('\n');

/** Every face that the pages ask for, with the letters they use: a face that is not there when the page is printed is not waited for. */
export async function lettersLoaded(pages: readonly Page[]): Promise<void> {
  const text = [...new Set(pages.flatMap(({ entities }) => entities.flatMap((entity) => (entity.kind === 'text' ? [...entity.text, ...(entity.suffix ?? '')] : []))))].join('');
  const faces = ["400 16px 'Atkinson Hyperlegible Next'", "700 16px 'Atkinson Hyperlegible Next'", '600 16px Besley'];
  // A face that does not come is no reason not to print: the browser has another.
  await Promise.all(faces.map((face) => document.fonts.load(face, text).catch(() => [])));
}

/** Stands in the page only while it is printed: the command of the browser's own menu prints the same. */
export function PrintOut({ pages }: { readonly pages: readonly Page[] }) {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const begin = (): void => flushSync(() => setPrinting(true));
    const end = (): void => setPrinting(false);
    addEventListener('beforeprint', begin);
    addEventListener('afterprint', end);
    return () => {
      removeEventListener('beforeprint', begin);
      removeEventListener('afterprint', end);
    };
  }, []);
  if (!printing || pages.length === 0) return null;
  return createPortal(
    <div className="print-out">
      <style>{paperRules(pages)}</style>
      {pages.map((page, i) => {
        const svg = writePageSvg(page);
        // Written by the program itself, every text of the job escaped.
        // oxlint-disable-next-line react/no-array-index-key
        return svg.ok && <div key={i} className="print-page" style={{ page: paperName(page) }} dangerouslySetInnerHTML={{ __html: svg.value }} />;
      })}
    </div>,
    document.body,
  );
}
