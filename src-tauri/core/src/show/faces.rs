//! The two faces as pictures to work on.

use super::{Lens, head, names, swatches};
use crate::assembly::Seam;
use crate::faces::{Face, layers, mirrored};
use crate::journal::Journal;
use crate::tasks::Task;
use crate::view::{FaceCell, FacesView, SewnLine};

/// One face.
pub(super) fn faces(journal: &Journal, face: Face, lens: Lens<'_>) -> FacesView {
    let throw = journal.throw();
    let (across, down) = (throw.plan.across, throw.plan.down);
    let turned = |piece| match face {
        Face::Front => piece,
        Face::Back => mirrored(piece, across),
    };
    let cells = throw
        .assembly()
        .whole()
        .squares()
        .map(|piece| {
            let (cover, shown) = (throw.cover(piece), turned(piece));
            let print = cover.on(face);
            let stays = throw.is_joined(piece) || throw.has(piece, crate::deed::cover_task(face));
            let cloth = match print.and_then(|p| throw.prints.get(usize::from(p))) {
                Some(print) => print.name.clone(),
                None => say!(lens, "bare"),
            };
            let key = if stays { "cell-stays" } else { "cell" };
            FaceCell {
                piece,
                x: shown.col,
                y: shown.row,
                print,
                denim: cover.denim,
                stays,
                spoken: say!(
                    lens,
                    key,
                    piece = names::spoken(throw, piece, lens),
                    cloth = cloth
                ),
            }
        })
        .collect();
    let sewn = throw
        .assembly()
        .joins()
        .iter()
        .filter(|j| throw.has(j.whole, Task::Stitch))
        .map(|j| {
            let second = turned(j.second);
            let at = match (j.seam, face) {
                // Turned over, the second part lies left of the seam.
                (Seam::Upright, Face::Back) => second.col + second.cols,
                _ => second.col,
            };
            match j.seam {
                Seam::Upright => SewnLine {
                    x1: at,
                    y1: second.row,
                    x2: at,
                    y2: second.row + second.rows,
                },
                Seam::Level => SewnLine {
                    x1: second.col,
                    y1: second.row,
                    x2: second.col + second.cols,
                    y2: second.row,
                },
            }
        })
        .collect();
    let on = |face| {
        throw
            .covers()
            .iter()
            .filter(|c| c.on(face).is_some())
            .count() as u32
    };
    let covered = [on(Face::Front), on(Face::Back)];
    let both = throw.covers().iter().filter(|c| c.layers() == 3).count();
    let (lap, crossing) = layers(across, down, throw.covers());
    let squares = throw.plan.squares();
    let title = match face {
        Face::Front => say!(lens, "face-front"),
        Face::Back => say!(lens, "face-back"),
    };
    let this = covered[usize::from(face == Face::Back)];
    let mut lines = vec![
        say!(lens, "face-covered", n = this, all = squares),
        say!(lens, "face-both", n = both),
    ];
    if lap > 0 {
        lines.push(say!(lens, "face-layers", lap = lap, crossing = crossing));
    }
    FacesView {
        head: head(journal, lens),
        face,
        spoken: say!(
            lens,
            "face-spoken",
            title = title.as_str(),
            across = across,
            down = down,
            n = this
        ),
        title,
        across,
        down,
        cells,
        sewn,
        prints: swatches(journal, lens),
        denims: throw.denims.clone(),
        lines,
        covered,
        squares,
    }
}
