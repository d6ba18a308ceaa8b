/**
 * Stands in for the three packages (HTML and SVG to PDF) that the PDF library would load for jobs that it is never given here, so that
 * they are no part of the app. The build puts it in their place.
 */
export default {};
