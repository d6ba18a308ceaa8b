export function StockRoom() {
  return <main id="sheet" className="sheet" tabIndex={-1} />;
}
