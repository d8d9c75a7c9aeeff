//! The one or two letters by which a fabric is known in pictures, so that colour is never the
//! only sign.
//!
//! Letters that squares or papers may carry stay: a fabric keeps its own for as long as it keeps
//! its name, whatever is added, renamed or taken off the list around it.

/// Letters for each name, no two alike while letters last. `taken` are spoken for already.
pub fn letters_of<'a>(names: impl Iterator<Item = &'a str>, taken: &[String]) -> Vec<String> {
    let mut all = taken.to_vec();
    for name in names {
        let found = free(name, &all);
        all.push(found);
    }
    all.split_off(taken.len())
}

/// Letters for a list of names that was another before. `before` has the names of then, each with
/// its letters: who is on both lists keeps them, and the others take what is free.
pub fn kept<'a>(
    before: &[(&str, &str)],
    names: impl Iterator<Item = &'a str> + Clone,
) -> Vec<String> {
    let mut left = before.to_vec();
    let mut all: Vec<Option<String>> = names
        .clone()
        .enumerate()
        .map(|(n, name)| {
            // Of two with one name each has its own: the one at that place, else the first.
            let at = before.get(n).filter(|was| was.0 == name);
            let found = left
                .iter()
                .position(|was| at.map_or(was.0 == name, |at| was == at))?;
            Some(left.remove(found).1.to_string())
        })
        .collect();
    let mut taken: Vec<String> = all.iter().flatten().cloned().collect();
    for (name, own) in names.zip(&mut all) {
        if own.is_none() {
            let found = free(name, &taken);
            taken.push(found.clone());
            *own = Some(found);
        }
    }
    all.into_iter().flatten().collect()
}

/// The first letters of a name that nobody has.
fn free(name: &str, taken: &[String]) -> String {
    let signs: Vec<char> = name.chars().filter(|c| c.is_alphanumeric()).collect();
    let first = signs
        .first()
        .map_or("?".to_string(), |c| c.to_uppercase().to_string());
    let with = |c: &char| format!("{first}{}", c.to_lowercase());
    let numbers = (2..100).map(|n| format!("{first}{n}"));
    std::iter::once(first.clone())
        .chain(signs.iter().skip(1).map(with))
        .chain(numbers)
        .find(|letters| !taken.contains(letters))
        .unwrap_or_else(|| "?".into())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn after(before: &[(&str, &str)], names: &[&str]) -> Vec<String> {
        kept(before, names.iter().copied())
    }

    #[test]
    fn letters_differ() {
        let names = ["Rosehip", "Rust", "rosette", "R", "Moss"];
        let first = letters_of(names.into_iter(), &[]);
        assert_eq!(first, ["R", "Ru", "Ro", "R2", "M"]);
        assert_eq!(after(&[], &names), first);
        let taken = ["R".to_string(), "Ru".to_string()];
        assert_eq!(letters_of(["Rust"].into_iter(), &taken), ["Rs"]);
    }

    #[test]
    fn a_fabric_keeps_its_letters_whatever_happens_around_it() {
        let before = [("Rosehip", "R"), ("Barley", "B"), ("Bark", "Ba")];
        // One is renamed: the others stay, and it takes what is free.
        let now = after(&before, &["Berry", "Barley", "Bark"]);
        assert_eq!(now, ["Be", "B", "Ba"]);
        // One is taken off the list, and what it had is free for a new one.
        let now = after(&before, &["Rosehip", "Bark", "Beet"]);
        assert_eq!(now, ["R", "Ba", "B"]);
        // One whose name is only spelt otherwise has its own again.
        let now = after(&before, &["Rosehips", "Barley", "Bark"]);
        assert_eq!(now, ["R", "B", "Ba"]);
    }

    #[test]
    fn two_of_one_name_keep_each_its_own() {
        let before = [("Moss", "M"), ("Moss", "Mo")];
        assert_eq!(after(&before, &["Moss", "Moss"]), ["M", "Mo"]);
        assert_eq!(after(&before, &["Fern", "Moss"]), ["F", "Mo"]);
        assert_eq!(after(&before, &["Moss"]), ["M"]);
    }
}
