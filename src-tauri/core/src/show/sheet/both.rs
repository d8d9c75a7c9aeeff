//! Both systems of units, side by side.

use crate::show::context::Context;
use crate::show::parts::Figure;
use crate::show::sheet::content::Row;
use crate::throw::tasks::Task;
use std::collections::BTreeMap;

/// What is made twice over: with the maker's ruler, and turned over.
pub(super) struct Both<'a> {
    pub(super) single: Context<'a>,
    pub(super) turned: Context<'a>,
    pub(super) doubled: Context<'a>,
    /// What was learned of each step.
    pub(super) learned: BTreeMap<Task, Vec<String>>,
}

impl Both<'_> {
    pub(super) fn say(&self, key: &str, args: &[(&str, crate::words::Arg)]) -> String {
        self.doubled.say(key, args)
    }

    /// The same figures by either ruler, side by side.
    pub(super) fn rows(&self, figures: impl Fn(Context<'_>) -> Vec<Figure>) -> Vec<Row> {
        let (own, other) = (figures(self.single), figures(self.turned));
        own.into_iter()
            .zip(other)
            .map(|(own, other)| Row {
                label: own.label,
                other: (own.value.text != other.value.text).then_some(other.value.text),
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
