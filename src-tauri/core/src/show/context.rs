//! What a view is made with: the words, the ruler and the time.

use crate::measure::{
    Fraction, Length, MetricUnit, ParseError, Ruler, System, eighth_inches, in_nm, inches,
    sixty_fourths, tenths_of_mm, zero,
};
use crate::plan::binding::row_from_edge;
use crate::throw::Time;
use crate::words::{Arg, Shown, Words};

/// A shown length without its sign for being rounded.
fn bare(text: &str) -> &str {
    text.strip_prefix("≈\u{a0}").unwrap_or(text)
}

/// What a view is made with: the words, the ruler, and the time.
#[derive(Clone, Copy)]
pub struct Context<'a> {
    /// The language.
    pub words: &'a Words,
    /// The ruler.
    pub ruler: Ruler,
    /// Now.
    pub now: Time,
}

impl Context<'_> {
    pub(super) fn say(&self, key: &str, args: &[(&str, Arg)]) -> String {
        self.words.say(key, args)
    }

    /// A length as typed.
    pub(super) fn parse(&self, typed: &str) -> Result<Length, ParseError> {
        self.words.parse(typed, self.ruler)
    }

    /// A length off the ruler.
    pub(super) fn length(&self, length: Length) -> Shown {
        self.words.length(length, self.ruler)
    }

    /// A needle's spacing or a stitch's width: in millimetres everywhere, as needles are marked.
    pub(super) fn needle(&self, length: Length) -> Shown {
        let mm = Ruler {
            system: System::Metric,
            metric: MetricUnit::Mm,
            ..self.ruler
        };
        self.words.exact(length, mm)
    }

    /// Fringe. Where it is scarce, a mark of the ruler may lie between it and the least that is wanted:
    /// then it is told in 32nds of an inch, or tenths of a millimetre. Less than nothing is none.
    pub(super) fn fringe(&self, length: Length) -> Shown {
        if length < zero() {
            return self.plain(say!(self, "none"));
        }
        self.in_each(|ruler| {
            // So little is told in millimetres by those too who measure in centimetres.
            let ruler = Ruler {
                metric: MetricUnit::Mm,
                ..ruler
            };
            if length >= sixty_fourths(8) {
                return self.words.length(length, ruler);
            }
            let fine = Ruler {
                fraction: Fraction::ThirtySecond,
                ..ruler
            };
            self.words.exact(length, fine)
        })
    }

    /// A length that nobody marks with a ruler, such as the whole binding: in metres to the
    /// centimetre from one on.
    pub(super) fn long(&self, length: Length) -> Shown {
        self.in_each(|ruler| self.long_by(length, ruler))
    }

    fn long_by(&self, length: Length, ruler: Ruler) -> Shown {
        let (metre, centimetre) = (tenths_of_mm(10_000), tenths_of_mm(100));
        if ruler.system == System::Inch || length < metre {
            return self.words.single(length, ruler);
        }
        let count = (in_nm(length) + in_nm(centimetre) / 2) / in_nm(centimetre);
        let n = self.words.decimal(count as f64 / 100.0, 2);
        let n = n.trim_end_matches('0').trim_end_matches(self.words.point());
        let text = say!(self, "far-m", n = n);
        let spoken = say!(self, "spoken-far-m", n = n);
        match centimetre * count == length {
            true => Shown {
                text,
                spoken,
                rounded: false,
            },
            false => Shown {
                text: format!("≈\u{a0}{text}"),
                spoken: say!(self, "spoken-about", length = spoken),
                rounded: true,
            },
        }
    }

    /// A long way, such as all seams together: whole metres or yards from ten on.
    pub(super) fn far(&self, length: Length) -> Shown {
        self.in_each(|ruler| {
            let (unit, key) = match ruler.system {
                System::Inch => (inches(36), "yd"),
                System::Metric => (tenths_of_mm(10_000), "m"),
            };
            if length < unit * 10 {
                return self.long_by(length, ruler);
            }
            let n = (in_nm(length) + in_nm(unit) / 2) / in_nm(unit);
            Shown {
                text: say!(self, format!("far-{key}"), n = n),
                spoken: say!(self, format!("spoken-far-{key}"), n = n),
                rounded: true,
            }
        })
    }

    /// How far in from a raw edge a fold or a patch is stitched down: ⅛ in, or 3 mm
    /// (common practice, no source).
    pub(super) fn edge_in(&self) -> Shown {
        let [inch, metric] = [System::Inch, System::Metric].map(row_from_edge);
        self.about(inch, metric)
    }

    /// How far apart the snips into an allowance are: ¼ in, or 6 mm (common practice, no
    /// source).
    pub(super) fn snips_apart(&self) -> Shown {
        self.about(eighth_inches(2), tenths_of_mm(60))
    }

    /// A small length of common practice, round in either system; millimetres for metric.
    pub(super) fn about(&self, inch: Length, metric: Length) -> Shown {
        self.in_each(|ruler| {
            let length = match ruler.system {
                System::Inch => inch,
                System::Metric => metric,
            };
            let metric = MetricUnit::Mm;
            self.words.single(length, Ruler { metric, ..ruler })
        })
    }

    /// Text that each system writes in its own way; both where the words are doubled.
    pub(super) fn either(&self, inch: String, metric: String) -> String {
        let (own, other) = match self.ruler.system {
            System::Inch => (inch, metric),
            System::Metric => (metric, inch),
        };
        match self.words.is_doubled() {
            true => say!(self, "sheet-both", first = own, second = other),
            false => own,
        }
    }

    /// Two lengths as `27½ × 36½ in`.
    pub(super) fn by(&self, width: Length, height: Length) -> Shown {
        self.in_each(|ruler| self.by_ruler(width, height, ruler))
    }

    pub(super) fn by_ruler(&self, width: Length, height: Length, ruler: Ruler) -> Shown {
        let (w, h) = (
            self.words.single(width, ruler),
            self.words.single(height, ruler),
        );
        let rounded = w.rounded || h.rounded;
        let (first, second) = (bare(&w.text), bare(&h.text));
        let unit = |s: &str| s.rsplit_once('\u{a0}').map(|(_, unit)| unit.to_string());
        let short = match first.rsplit_once('\u{a0}') {
            Some((number, _)) if unit(first) == unit(second) => number,
            _ => first,
        };
        // One sign for both, in front.
        let about = if rounded { "≈\u{a0}" } else { "" };
        Shown {
            text: format!("{about}{short}\u{a0}× {second}"),
            spoken: say!(self, "spoken-by", width = w.spoken, height = h.spoken),
            rounded,
        }
    }

    /// Plain words where a length would stand.
    pub(super) fn plain(&self, text: String) -> Shown {
        Shown {
            spoken: text.clone(),
            text,
            rounded: false,
        }
    }

    /// What is cut off or laid out by the ruler: to its nearest mark.
    pub(super) fn marked(&self, length: Length) -> Shown {
        let one = |ruler: Ruler| {
            let mark = self.words.single(ruler.nearest(length), ruler);
            if ruler.nearest(length) == length {
                return mark;
            }
            Shown {
                text: format!("≈\u{a0}{}", mark.text),
                spoken: say!(self, "spoken-about", length = mark.spoken),
                rounded: true,
            }
        };
        self.in_each(one)
    }

    /// Something read off this ruler; off both where the words are doubled.
    pub(super) fn in_each(&self, shown: impl Fn(Ruler) -> Shown) -> Shown {
        self.words.in_each(self.ruler, shown)
    }

    /// A length with the word for over or under.
    pub(super) fn over_under(&self, over: Length) -> Shown {
        if over == zero() {
            return self.plain(say!(self, "exact"));
        }
        let (key, size) = if over > zero() {
            ("over", over)
        } else {
            ("under", zero() - over)
        };
        let size = self.length(size);
        if self.ruler.nearest(over) == zero() && size.text.starts_with("≈\u{a0}0") {
            return self.plain(say!(self, "within-a-mark"));
        }
        Shown {
            text: say!(self, key, length = size.text),
            spoken: say!(self, key, length = size.spoken),
            rounded: size.rounded,
        }
    }
}
