/**
 * Scroll to the top: of the page between the bars, or with large letters of all of it, since then the
 * window scrolls.
 */
export function toTop() {
  document.getElementById('main')?.scrollTo(0, 0);
  window.scrollTo(0, 0);
}
