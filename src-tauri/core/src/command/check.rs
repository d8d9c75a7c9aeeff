//! Checks that several families of commands share.

use crate::cloth::fabric::{Denim, Print};
use crate::command::action::*;
use crate::command::rejection::Rejection;
use crate::measure::{Length, in_nm};
use crate::plan::assembly::Rect;
use crate::throw::state::Throw;

pub(crate) fn clean_name(name: &str) -> Result<String, Rejection> {
    let name: String = name
        .chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    let name = name.trim();
    if name.is_empty() || name.chars().count() > LONGEST_NAME {
        return Err(Rejection::Name);
    }
    Ok(name.to_string())
}

pub(crate) fn check_cloth(prints: &[Print], denims: &[Denim]) -> Result<(), Rejection> {
    if prints.len() > MOST_CLOTHS || denims.len() > MOST_CLOTHS {
        return Err(Rejection::Cloth);
    }
    let colour = |c: &str| {
        c.len() == 7 && c.starts_with('#') && c[1..].bytes().all(|b| b.is_ascii_hexdigit())
    };
    // Between 1 mm and 2 m.
    let real = |patch: Length| (1_000_000..=2_000_000_000).contains(&in_nm(patch));
    if !prints.iter().all(|p| p.patch.is_none_or(real)) {
        return Err(Rejection::Cloth);
    }
    let looks = prints.iter().map(|p| (&p.name, &p.colour));
    for (name, hue) in looks.chain(denims.iter().map(|d| (&d.name, &d.colour))) {
        clean_name(name)?;
        if !colour(hue) {
            return Err(Rejection::Cloth);
        }
    }
    Ok(())
}

/// Checks that no two fabrics and no two denims are to have one name, but for those that had it
/// `before`: then a list could not say which of them it means.
pub(super) fn check_names(
    prints: &[Print],
    denims: &[Denim],
    before: Option<&Throw>,
) -> Result<(), Rejection> {
    let (was_prints, was_denims) = before.map_or((&[][..], &[][..]), |t| (&t.prints, &t.denims));
    let print = |p: &Print| p.name.trim().to_lowercase();
    let denim = |d: &Denim| d.name.trim().to_lowercase();
    let twin = twin(prints, was_prints, print).map(|p| &p.name);
    match twin.or_else(|| self::twin(denims, was_denims, denim).map(|d| &d.name)) {
        Some(name) => Err(Rejection::SameName(name.trim().to_string())),
        None => Ok(()),
    }
}

/// The first of `now` that shares its name with another, where no more than one had it before.
fn twin<'a, T>(now: &'a [T], was: &[T], name: impl Fn(&T) -> String) -> Option<&'a T> {
    let times = |list: &[T], own: &str| list.iter().filter(|one| name(one) == own).count();
    let is_new = |own: &str| times(now, own) > times(was, own).max(1);
    now.iter().find(|one| is_new(&name(one)))
}

pub(super) fn known_squares(throw: &Throw, pieces: &[Rect]) -> Result<Vec<Rect>, Rejection> {
    if pieces.is_empty() {
        return Err(Rejection::Nothing);
    }
    let unknown = |p: &&Rect| !p.is_square() || !throw.assembly().knows(**p);
    match pieces.iter().find(unknown) {
        Some(piece) => Err(Rejection::NoSuchPiece(*piece)),
        None => Ok(pieces.to_vec()),
    }
}

/// Checks that a note or a photo is about a piece of this throw.
pub(super) fn about(throw: &Throw, piece: Option<Rect>) -> Result<(), Rejection> {
    match piece.filter(|p| !throw.assembly().knows(*p)) {
        Some(piece) => Err(Rejection::NoSuchPiece(piece)),
        None => Ok(()),
    }
}
