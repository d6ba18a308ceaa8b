export function FilesRoom() {
  return <main id="sheet" className="sheet" tabIndex={-1} />;
}
