//! Both systems of units, side by side.

use crate::show::context::Context;
use crate::show::parts::Figure;
use crate::show::sheet::content::Row;
use crate::throw::tasks::Task;
use std::collections::BTreeMap;

/// What is made twice over: with the maker's ruler, and turned over.
pub(super) struct Both<'a> {
    pub(super) single: Context<'a>,
    /// The other system; none where one alone is printed.
    pub(super) turned: Option<Context<'a>>,
    /// For sentences: with every measure in each system that is printed.
    pub(super) doubled: Context<'a>,
    /// What was learned of each step.
    pub(super) learned: BTreeMap<Task, Vec<String>>,
}

impl Both<'_> {
    pub(super) fn say(&self, key: &str, args: &[(&str, crate::words::Arg)]) -> String {
        self.doubled.say(key, args)
    }

    /// The same figures by each ruler that is printed, side by side.
    pub(super) fn rows(&self, figures: impl Fn(Context<'_>) -> Vec<Figure>) -> Vec<Row> {
        let own = figures(self.single);
        let others = self.turned.map(figures).unwrap_or_default();
        let others = others.into_iter().map(|figure| Some(figure.value.text));
        own.into_iter()
            .zip(others.chain(std::iter::repeat(None)))
            .map(|(own, other)| Row {
                label: own.label,
                other: other.filter(|other| own.value.text != *other),
                own: own.value.text,
            })
            .collect()
    }

    pub(super) fn row(
        &self,
        key: &str,
        value: impl Fn(Context<'_>) -> crate::words::Shown,
    ) -> Vec<Row> {
        self.rows(|context| {
            vec![Figure {
                label: context.say(&format!("figure-{key}"), &[]),
                value: value(context),
            }]
        })
    }
}
