//! The core's modules form no circle, and its rooms depend only downwards.
//!
//! Every source file of `src-tauri/core/src` is parsed with `syn`; every path in it, also
//! those within macros, is resolved to the module that defines what it names (a name that a
//! room re-exports is followed to its home). Code for tests is left out.

use proc_macro2::{TokenStream, TokenTree};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use syn::visit::Visit;

/// The rooms from the bottom up: each may use those before it and no other.
const ROOMS: [&str; 14] = [
    "types", "measure", "words", "plan", "cloth", "throw", "faces", "fitting", "command", "rescue",
    "log", "show", "demo", "lib",
];

/// The state and its work index hold each other; both live in one room.
const TIED: [&str; 2] = ["throw::state", "throw::index"];

#[derive(Default)]
struct Module {
    items: BTreeSet<String>,
    /// A name that the module re-exports, and the path it stands for.
    exports: BTreeMap<String, Vec<String>>,
    /// Paths whose names are all re-exported.
    globs: Vec<Vec<String>>,
    paths: Vec<Vec<String>>,
}

fn is_test(attrs: &[syn::Attribute]) -> bool {
    attrs.iter().any(|attr| {
        let list = attr.meta.require_list();
        attr.path().is_ident("cfg") && list.is_ok_and(|l| l.tokens.to_string().contains("test"))
    })
}

impl Module {
    fn read(&mut self, file: &syn::File) {
        for item in &file.items {
            let (name, attrs) = match item {
                syn::Item::Fn(i) => (Some(&i.sig.ident), &i.attrs),
                syn::Item::Struct(i) => (Some(&i.ident), &i.attrs),
                syn::Item::Enum(i) => (Some(&i.ident), &i.attrs),
                syn::Item::Type(i) => (Some(&i.ident), &i.attrs),
                syn::Item::Const(i) => (Some(&i.ident), &i.attrs),
                syn::Item::Static(i) => (Some(&i.ident), &i.attrs),
                syn::Item::Trait(i) => (Some(&i.ident), &i.attrs),
                syn::Item::Mod(i) => (None, &i.attrs),
                syn::Item::Impl(i) => (None, &i.attrs),
                syn::Item::Use(i) => {
                    let exported = !matches!(i.vis, syn::Visibility::Inherited);
                    if !is_test(&i.attrs) {
                        self.read_use(&mut Vec::new(), &i.tree, exported);
                    }
                    continue;
                }
                _ => (None, &Vec::new()),
            };
            if !is_test(attrs) {
                self.items.extend(name.map(ToString::to_string));
                self.visit_item(item);
            }
        }
    }

    fn read_use(&mut self, before: &mut Vec<String>, tree: &syn::UseTree, exported: bool) {
        let named = |module: &mut Module, last: &syn::Ident, alias: &syn::Ident| {
            let mut path = before.clone();
            if last != "self" {
                path.push(last.to_string());
            }
            if exported {
                module.exports.insert(alias.to_string(), path.clone());
            }
            module.paths.push(path);
        };
        match tree {
            syn::UseTree::Path(path) => {
                before.push(path.ident.to_string());
                self.read_use(before, &path.tree, exported);
                before.pop();
            }
            syn::UseTree::Group(group) => {
                for tree in &group.items {
                    self.read_use(before, tree, exported);
                }
            }
            syn::UseTree::Name(name) => named(self, &name.ident, &name.ident),
            syn::UseTree::Rename(name) => named(self, &name.ident, &name.rename),
            syn::UseTree::Glob(_) => {
                if exported {
                    self.globs.push(before.clone());
                }
                self.paths.push(before.clone());
            }
        }
    }

    fn read_tokens(&mut self, tokens: TokenStream) {
        let mut path: Vec<String> = Vec::new();
        let mut joined = 0;
        for tree in tokens {
            match tree {
                TokenTree::Ident(ident) => {
                    if joined < 2 {
                        self.paths.push(std::mem::take(&mut path));
                    }
                    path.push(ident.to_string());
                    joined = 0;
                }
                TokenTree::Punct(punct) if punct.as_char() == ':' => joined += 1,
                TokenTree::Group(group) => self.read_tokens(group.stream()),
                _ => joined = 0,
            }
        }
        self.paths.push(path);
    }
}

impl<'ast> Visit<'ast> for Module {
    fn visit_path(&mut self, path: &'ast syn::Path) {
        let names = path.segments.iter().map(|s| s.ident.to_string());
        self.paths.push(names.collect());
        syn::visit::visit_path(self, path);
    }

    fn visit_visibility(&mut self, _: &'ast syn::Visibility) {}

    fn visit_macro(&mut self, called: &'ast syn::Macro) {
        self.read_tokens(called.tokens.clone());
        syn::visit::visit_macro(self, called);
    }
}

type Modules = BTreeMap<String, Module>;

fn read_all(root: &Path, folder: &Path, modules: &mut Modules) {
    for path in fs::read_dir(folder)
        .unwrap()
        .map(|found| found.unwrap().path())
    {
        if path.is_dir() {
            read_all(root, &path, modules);
            continue;
        }
        let inner = path.strip_prefix(root).unwrap().with_extension("");
        let mut names: Vec<&str> = inner.iter().map(|n| n.to_str().unwrap()).collect();
        if names.contains(&"tests") {
            continue;
        }
        if names.last() == Some(&"mod") {
            names.pop();
        }
        let file = syn::parse_file(&fs::read_to_string(&path).unwrap()).unwrap();
        modules.entry(names.join("::")).or_default().read(&file);
    }
}

/// The module that defines what a path names, as seen from `here`.
fn home(modules: &Modules, here: &str, path: &[String], depth: usize) -> Option<String> {
    let mut names: Vec<&str> = here.split("::").filter(|n| *n != "lib").collect();
    let mut rest = path;
    match path.first()?.as_str() {
        "crate" | "lapwork_core" => {
            names.clear();
            rest = &rest[1..];
        }
        "self" => rest = &rest[1..],
        "super" => {
            while rest.first().is_some_and(|n| n == "super") {
                names.pop()?;
                rest = &rest[1..];
            }
        }
        first => {
            let child = names.iter().copied().chain([first]).collect::<Vec<_>>();
            if !modules.contains_key(&child.join("::")) {
                return None;
            }
        }
    }
    while let Some(next) = rest.first() {
        let inner = names
            .iter()
            .copied()
            .chain([next.as_str()])
            .collect::<Vec<_>>();
        if !modules.contains_key(&inner.join("::")) {
            break;
        }
        names.push(next);
        rest = &rest[1..];
    }
    // The crate itself is only named as the beginning of a path, or by how far one is seen.
    let found = Some(names.join("::")).filter(|_| !names.is_empty())?;
    let (Some(name), Some(module)) = (rest.first(), modules.get(&found)) else {
        return Some(found);
    };
    if module.items.contains(name) || depth > 8 {
        return Some(found);
    }
    if let Some(export) = module.exports.get(name) {
        return home(modules, &found, export, depth + 1);
    }
    for glob in &module.globs {
        let inner = home(modules, &found, glob, depth + 1)?;
        if modules[&inner].items.contains(name) {
            return Some(inner);
        }
    }
    Some(found)
}

/// Each module with those it uses.
fn uses(modules: &Modules) -> BTreeMap<String, BTreeSet<String>> {
    modules
        .iter()
        .map(|(here, module)| {
            let exported: BTreeSet<&Vec<String>> =
                module.exports.values().chain(&module.globs).collect();
            // A re-export is followed where it is used; by itself it uses nothing.
            let paths = module.paths.iter().filter(|path| !exported.contains(path));
            let mut used: BTreeSet<String> = paths
                .filter_map(|path| home(modules, here, path, 0))
                .collect();
            used.remove(here);
            (here.clone(), used)
        })
        .collect()
}

/// A way from a module back to itself, if there is one.
fn circle(uses: &BTreeMap<String, BTreeSet<String>>) -> Option<Vec<String>> {
    fn walk<'a>(
        at: &'a str,
        uses: &'a BTreeMap<String, BTreeSet<String>>,
        way: &mut Vec<&'a str>,
        done: &mut BTreeSet<&'a str>,
    ) -> Option<Vec<String>> {
        if let Some(from) = way.iter().position(|m| *m == at) {
            return Some(
                way[from..]
                    .iter()
                    .chain([&at])
                    .map(ToString::to_string)
                    .collect(),
            );
        }
        if done.contains(at) {
            return None;
        }
        way.push(at);
        for next in &uses[at] {
            if let Some(found) = walk(next, uses, way, done) {
                return Some(found);
            }
        }
        way.pop();
        done.insert(at);
        None
    }
    let mut done = BTreeSet::new();
    uses.keys()
        .find_map(|from| walk(from, uses, &mut Vec::new(), &mut done))
}

fn core() -> Modules {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../src-tauri/core/src");
    let mut modules = Modules::new();
    read_all(&root, &root, &mut modules);
    modules
}

#[test]
fn no_circle_of_modules() {
    let mut uses = uses(&core());
    assert!(uses.len() > 60, "only {} modules were read", uses.len());
    assert!(
        uses["throw::fold"].contains("throw::event"),
        "uses are not seen"
    );
    for (one, other) in [(TIED[0], TIED[1]), (TIED[1], TIED[0])] {
        assert!(
            uses.get_mut(one).unwrap().remove(other),
            "{one} is not tied to {other} any more"
        );
    }
    let found = circle(&uses);
    assert!(
        found.is_none(),
        "modules in a circle: {}",
        found.unwrap().join(" -> ")
    );
}

#[test]
fn rooms_depend_downwards_and_only_the_top_uses_show() {
    let room = |module: &str| {
        let name = module.split("::").next().unwrap().to_string();
        let rank = ROOMS.iter().position(|r| *r == name);
        rank.unwrap_or_else(|| panic!("{name} is no room; add it to ROOMS where it belongs"))
    };
    for (module, used) in uses(&core()) {
        for other in used {
            assert!(
                room(&other) <= room(&module),
                "{module} uses {other}, which lies above it"
            );
        }
    }
}

#[test]
fn a_circle_is_found() {
    let list = |pairs: &[(&str, &[&str])]| {
        let set = |names: &[&str]| names.iter().map(ToString::to_string).collect();
        pairs
            .iter()
            .map(|(from, to)| (from.to_string(), set(to)))
            .collect()
    };
    let ring = list(&[("a", &["b"]), ("b", &["c"]), ("c", &["a"])]);
    assert_eq!(circle(&ring).unwrap().join(" "), "a b c a");
    assert_eq!(
        circle(&list(&[("a", &["b", "c"]), ("b", &["c"]), ("c", &[])])),
        None
    );
}
