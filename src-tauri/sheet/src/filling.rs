//! How far the pages of a document are filled.

use typst::layout::{Abs, Frame, FrameItem, Point};
use typst_layout::{Page, PagedDocument};

/// The margins above and below the text, in points: those of the template.
const TOP: f64 = 15.0 / 25.4 * 72.0;
const FOOT: f64 = 22.0 / 25.4 * 72.0;

/// How many pages are filled less than `share` of their height.
pub(crate) fn bare(document: &PagedDocument, share: f64) -> usize {
    let pages = document.pages();
    match pages.len() {
        // There is nothing to move from a page that is alone.
        1 => 0,
        _ => pages.iter().filter(|page| filled(page) < share).count(),
    }
}

/// Whether the last page is filled to such a share of its height, or is alone.
pub(crate) fn is_last_filled(document: &PagedDocument, share: f64) -> bool {
    let pages = document.pages();
    pages.len() < 2 || pages.last().is_none_or(|page| filled(page) >= share)
}

/// How far down a page reaches what stands on it, of its height between the margins. Its foot
/// does not count.
fn filled(page: &Page) -> f64 {
    let height = page.frame.height().to_pt();
    let end = height - FOOT;
    let lowest = lowest(&page.frame, Point::zero(), Abs::pt(end + 6.0)).to_pt();
    ((lowest - TOP) / (end - TOP)).clamp(0.0, 1.0)
}

/// The lowest edge of what is drawn above a line.
fn lowest(frame: &Frame, at: Point, line: Abs) -> Abs {
    let mut low = Abs::zero();
    for (offset, item) in frame.items() {
        let at = at + *offset;
        let edge = match item {
            FrameItem::Group(group) => lowest(&group.frame, at, line),
            FrameItem::Text(_) | FrameItem::Shape(..) => at.y,
            FrameItem::Image(_, size, _) => at.y + size.y,
            FrameItem::Link(..) | FrameItem::Tag(_) => Abs::zero(),
        };
        if edge <= line {
            low = low.max(edge);
        }
    }
    low
}
