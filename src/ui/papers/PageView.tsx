import { useEffect, useMemo, useRef, useState, type CSSProperties, type KeyboardEvent } from 'react';
import type { LaidPapers, PaperWish } from '../../drawing/papers/types';
import type { Page } from '../../drawing/page';
import { SAFE_MARGINS, sheetOf } from '../../drawing/template/paperSizes';
import { writePageSvg } from '../../export/svg/writePageSvg';
import { KINDS } from './kinds';

/** Reference px to a mm: what the browser takes for true size. */
const TRUE_PX = 96 / 25.4;
const STEP = 1.25;
const LEAST_ZOOM = 0.2;
const MOST_ZOOM = 6;
/** px of desk round the page, both sides together, and for the bars that slide it. */
const ROUND_THE_PAGE = 44;
/** ms: what takes longer than this is told. */
const LONG = 300;

interface PageViewProps {
  readonly pages: readonly Page[];
  readonly wish: PaperWish;
  readonly laid: LaidPapers | undefined;
  readonly current: boolean;
  /** What keeps pages from being laid at all. */
  readonly failed: string | undefined;
}

/** The pages as they come from the printer, one at a time. */
export function PageView({ pages, wish, laid, current, failed }: PageViewProps) {
  const [number, setNumber] = useState(0);
  const [zoom, setZoom] = useState<number | 'fit'>('fit');
  const stage = useRef<HTMLElement>(null);
  const room = useRoom(stage);
  const late = useLate(!current && failed === undefined);

  const at = Math.min(number, pages.length - 1);
  const page = pages[at];
  const fit = page && room ? Math.min((room.width - ROUND_THE_PAGE) / page.width, (room.height - ROUND_THE_PAGE) / page.height) / TRUE_PX : 1;
  const bounded = (wanted: number): number => Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, wanted));
  const now = zoom === 'fit' ? bounded(fit) : zoom;
  const closer = (): void => setZoom(bounded(now * STEP));
  const further = (): void => setZoom(bounded(now / STEP));

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === '+' || event.key === '=') closer();
    else if (event.key === '-' || event.key === '−') further();
    else if (event.key === '0') setZoom('fit');
    else if (event.key === '1') setZoom(1);
    else return;
    event.preventDefault();
  };

  const way = page && page.width > page.height ? 'lying' : 'upright';
  const says =
    failed ??
    (page
      ? `${pages.length === 1 ? '1 page' : `Page ${at + 1} of ${pages.length}`}, ${wish.paper} ${way}${late ? ', being laid out anew' : ''}`
      : late
        ? 'being laid out'
        : '');

  return (
    <section className="page-area" aria-label="Page">
      <div className="cap">
        <h2>{KINDS[wish.kind].name}</h2>
        <p aria-live="polite">{says}</p>
      </div>
      <div className="page-does">
        {pages.length > 1 && (
          <div className="links">
            <button type="button" className="link" aria-disabled={at === 0} onClick={() => setNumber(Math.max(0, at - 1))}>
              Page before
            </button>
            <button type="button" className="link" aria-disabled={at === pages.length - 1} onClick={() => setNumber(Math.min(pages.length - 1, at + 1))}>
              Next page
            </button>
          </div>
        )}
        <div className="links zooms">
          <button type="button" className="link" aria-pressed={zoom === 'fit'} onClick={() => setZoom('fit')}>
            Fit
          </button>
          <button type="button" className="link" onClick={further}>
            Further
          </button>
          <button type="button" className="link" onClick={closer}>
            Closer
          </button>
          <button type="button" className="link" aria-pressed={zoom === 1} onClick={() => setZoom(1)}>
            True size
          </button>
          <span className="zoom-now">{Math.round(now * 100)} %</span>
        </div>
      </div>
      {/* What slides must be in reach of the keys. */}
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions */}
      <section
        ref={stage}
        className="page-stage"
        aria-label="The page, full size when printed"
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
        tabIndex={0}
        onKeyDown={onKeyDown}
      >
        {page ? <Paper page={page} wish={wish} zoom={now} /> : <NoPage laid={laid} />}
      </section>
    </section>
  );
}

function Paper({ page, wish, zoom }: { readonly page: Page; readonly wish: PaperWish; readonly zoom: number }) {
  const svg = useMemo(() => writePageSvg(page), [page]);
  if (!svg.ok) return <p className="no-page">{svg.problem.says}</p>;
  const lying = page.width > page.height;
  const border = sheetOf(wish.paper, lying, SAFE_MARGINS);
  const px = zoom * TRUE_PX;
  const style: CSSProperties = { width: page.width * px, height: page.height * px };
  const edge: CSSProperties = { inset: `${border.top * px}px ${border.right * px}px ${border.bottom * px}px ${border.left * px}px` };
  return (
    <div className="paper" style={style}>
      <div className="paper-border" style={edge} />
      {/* Written by the program itself, every text of the job escaped. */}
      {/* oxlint-disable-next-line jsx-a11y/prefer-tag-over-role */}
      <div className="paper-drawn" role="img" aria-label={`${KINDS[wish.kind].name}, ${page.name}`} dangerouslySetInnerHTML={{ __html: svg.value }} />
    </div>
  );
}

/** In the place of the page: what keeps it from being drawn. */
function NoPage({ laid }: { readonly laid: LaidPapers | undefined }) {
  if (!laid) return null;
  return (
    <div className="no-page">
      {[...laid.leftOut.flatMap(({ says }) => says), laid.problem?.says ?? ''].filter(Boolean).map((says) => (
        <p key={says}>{says}</p>
      ))}
    </div>
  );
}

/** Room of an element, px, as it changes. */
function useRoom(of: { readonly current: HTMLElement | null }): { readonly width: number; readonly height: number } | undefined {
  const [room, setRoom] = useState<{ readonly width: number; readonly height: number }>();
  useEffect(() => {
    const element = of.current;
    if (!element) return undefined;
    const watch = new ResizeObserver(() => setRoom({ width: element.offsetWidth, height: element.offsetHeight }));
    watch.observe(element);
    return () => watch.disconnect();
  }, [of]);
  return room;
}

/** Whether something has gone on for so long that it must be told. */
function useLate(going: boolean): boolean {
  const [late, setLate] = useState(false);
  useEffect(() => {
    if (!going) return undefined;
    const wait = setTimeout(() => setLate(true), LONG);
    return () => {
      clearTimeout(wait);
      setLate(false);
    };
  }, [going]);
  return late;
}
