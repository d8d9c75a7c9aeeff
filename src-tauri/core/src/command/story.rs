//! Notes and photos.

use crate::cloth::photos::PhotoId;
use crate::command::action::{LONGEST_CAPTION, LONGEST_NOTE, MOST_PHOTOS};
use crate::command::check::about;
use crate::command::rejection::Rejection;
use crate::plan::assembly::Rect;
use crate::throw::event::Event;
use crate::throw::state::Throw;
use crate::throw::tasks::Task;

/// Write something down.
pub(super) fn note(
    throw: &Throw,
    text: &str,
    piece: Option<Rect>,
    task: Option<Task>,
    next: bool,
) -> Result<Vec<Event>, Rejection> {
    let text = text.trim();
    if text.is_empty() || text.chars().count() > LONGEST_NOTE {
        return Err(Rejection::Words);
    }
    about(throw, piece)?;
    Ok(vec![Event::Noted {
        text: text.to_string(),
        piece,
        task,
        next,
    }])
}

/// Put a photo into the story.
pub(super) fn picture(
    throw: &Throw,
    photo: &PhotoId,
    words: &str,
    piece: Option<Rect>,
    task: Option<Task>,
) -> Result<Vec<Event>, Rejection> {
    let words = words.trim();
    if words.chars().count() > LONGEST_CAPTION {
        return Err(Rejection::Caption);
    }
    if throw.photos.iter().any(|p| p.id == *photo) {
        return Err(Rejection::PicturedAlready);
    }
    if throw.photos.len() >= MOST_PHOTOS {
        return Err(Rejection::Photo);
    }
    about(throw, piece)?;
    Ok(vec![Event::Pictured {
        photo: photo.clone(),
        words: words.to_string(),
        piece,
        task,
    }])
}

/// Take a photo out of the story.
pub(super) fn unpicture(throw: &Throw, photo: &PhotoId) -> Result<Vec<Event>, Rejection> {
    if !throw.photos.iter().any(|p| p.id == *photo) {
        return Err(Rejection::Photo);
    }
    Ok(vec![Event::Unpictured {
        photo: photo.clone(),
    }])
}
