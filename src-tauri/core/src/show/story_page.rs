//! The story as one self-contained page for a browser, to print or to keep.
//!
//! Promises: the page holds no script and loads nothing from elsewhere (its own policy
//! forbids it); all text is escaped; a missing photo is described in words.
//! The page is HTML5 (WHATWG) in UTF-8.

use super::Context;
use crate::cloth::photos::PhotoId;
use crate::show::{Story, StoryItem, StorySort};

/// How the page looks, on a screen and on paper.
const LOOKS: &str = "body{font:1.05rem/1.5 Georgia,serif;max-width:44rem;margin:2rem auto;\
padding:0 1rem;color:#22252b;background:#fffdf8}h1{margin-bottom:0}h2{margin-top:2.2rem;\
padding-bottom:.3rem;border-bottom:2px dashed #b4552b;font-size:1.2rem}figure{margin:1.2rem 0;\
break-inside:avoid}img{max-width:100%;max-height:40rem}figcaption,.about{color:#555a64}\
.made{font-weight:bold}.label{font-weight:bold}p{white-space:pre-line;break-inside:avoid}\
@media print{body{background:none;margin:0}}";

/// Letters that mean something in HTML, put so that they do not.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            _ => out.push(c),
        }
    }
    out
}

/// The page. `photo` gives a photo's bytes in base 64 (RFC 4648), as JPEG; none where it
/// is not there any more.
pub fn story_page(
    story: &Story,
    photo: impl Fn(&PhotoId) -> Option<String>,
    context: Context<'_>,
) -> String {
    let title = escaped(&story.title);
    let lang = escaped(&say!(context, "story-lang"));
    let mut out = format!(
        "<!doctype html>\n<html lang=\"{lang}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; \
         img-src data:; style-src 'unsafe-inline'\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>{title}</title>\n<style>{LOOKS}</style>\n</head>\n<body>\n<h1>{title}</h1>\n"
    );
    for line in &story.lines {
        out.push_str(&format!("<p>{}</p>\n", escaped(line)));
    }
    for day in &story.days {
        out.push_str(&format!(
            "<section>\n<h2><time datetime=\"{}\">{}</time></h2>\n",
            escaped(&day.date),
            escaped(&day.title)
        ));
        if let Some(made) = &day.made {
            out.push_str(&format!("<p class=\"made\">{}</p>\n", escaped(made)));
        }
        for item in &day.items {
            out.push_str(&entry_html(item, &photo, context));
        }
        out.push_str("</section>\n");
    }
    out.push_str("</body>\n</html>\n");
    out
}

fn entry_html(
    item: &StoryItem,
    photo: &impl Fn(&PhotoId) -> Option<String>,
    context: Context<'_>,
) -> String {
    let about = item.about.as_deref().map_or_else(String::new, |about| {
        format!(" <span class=\"about\">({})</span>", escaped(about))
    });
    let words = escaped(&item.words);
    match (&item.photo, item.sort) {
        (Some(id), _) => {
            let shown = match photo(id) {
                Some(bytes) => {
                    let alt = if item.words.is_empty() {
                        escaped(&item.label)
                    } else {
                        words.clone()
                    };
                    format!("<img alt=\"{alt}\" src=\"data:image/jpeg;base64,{bytes}\">")
                }
                None => format!("<p>{}</p>", escaped(&say!(context, "story-no-photo"))),
            };
            format!("<figure>{shown}<figcaption>{words}{about}</figcaption></figure>\n")
        }
        (None, StorySort::Turn) => format!("<p>{words}{about}</p>\n"),
        (None, _) => {
            let label = escaped(&item.label);
            format!("<p><span class=\"label\">{label}:</span> {words}{about}</p>\n")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::command::Command;
    use crate::measure::Ruler;
    use crate::words::Words;

    #[test]
    fn nothing_the_maker_writes_becomes_markup() {
        let words = Words::english();
        let context = Context {
            words: &words,
            ruler: Ruler::default(),
            now: 0,
        };
        let wild = "<script>alert('x')</script> & \"quoted\" <img src=x onerror=y>";
        let mut journal = crate::demo::throw(1_800_000_000_000);
        let there = PhotoId::parse(&"1a".repeat(32)).unwrap();
        let gone = PhotoId::parse(&"2b".repeat(32)).unwrap();
        let said = |photo: &PhotoId| Command::Picture {
            photo: photo.clone(),
            words: wild.into(),
            piece: None,
            task: None,
        };
        let note = Command::Note {
            text: wild.into(),
            piece: None,
            task: None,
            next: false,
        };
        let name = Command::Rename { name: wild.into() };
        for action in [name, note, said(&there), said(&gone)] {
            let entry = journal.propose(&action, 1_800_000_000_000).unwrap();
            journal.accept(entry).unwrap();
        }
        let story = super::super::story(&journal, &crate::show::ZoneName::default(), context);
        let page = story_page(
            &story,
            |id| (*id == there).then(|| "QUJD".to_string()),
            context,
        );
        assert!(
            !page.contains("<script") && !page.contains("<img src=x"),
            "{page}"
        );
        assert_eq!(page.matches("&lt;script&gt;").count(), 6, "{page}");
        assert_eq!(page.matches("<img ").count(), 1);
        assert!(page.contains("src=\"data:image/jpeg;base64,QUJD\""));
        assert!(page.contains(&say!(words, "story-no-photo")));
        assert!(!page.contains("http:") && !page.contains("https:") && !page.contains("//"));
    }
}
