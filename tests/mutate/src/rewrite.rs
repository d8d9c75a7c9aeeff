//! Makes the changes: every formula of a file behind a number, so that one build holds them all.
//!
//! `a + b` becomes `(match ((a), (b)) { (l, r) => if crate::mutant(7) { l - r } else { l + r } })`,
//! and likewise for the other kinds. Operands are named once, so that what is nested is not
//! repeated. Types, patterns, constants' own values and what is handed to macros stay as they are;
//! the use of a constant is what is changed, in the tests too, so that a test which merely repeats
//! a constant does not count as one that knows it.

use proc_macro2::{Group, Span, TokenStream, TokenTree};
use quote::{ToTokens, quote};
use std::collections::{BTreeMap, BTreeSet};
use syn::spanned::Spanned;
use syn::visit_mut::{self, VisitMut};
use syn::{BinOp, Expr, Lit, ReturnType, Type, parse_quote};

/// One change of one place.
#[derive(Debug, Clone)]
pub struct Change {
    /// Its number in the build.
    pub number: u32,
    /// The file, below the core's `src`.
    pub file: String,
    /// The line of the unchanged source.
    pub line: usize,
    /// The function it is in, by its name.
    pub function: String,
    /// What is changed: `+ to -`, `5 to 6`.
    pub what: String,
    /// The text that is changed.
    pub text: String,
    /// Tells this change from every other, also once lines have moved.
    pub key: String,
}

/// A numeric constant of a formula file and the numbers of its two changes.
pub type Constants = BTreeMap<String, (u32, u32)>;

/// Which number the next change gets, which were made, and which do not compile.
#[derive(Default)]
pub struct Made {
    /// Those that are in the build.
    pub changes: Vec<Change>,
    /// The keys of those that do not compile.
    pub refused: BTreeSet<String>,
    seen: BTreeMap<String, usize>,
    next: u32,
}

impl Made {
    /// None yet; those refused are not made.
    pub fn without(refused: &BTreeSet<String>) -> Made {
        Made {
            refused: refused.clone(),
            ..Made::default()
        }
    }

    /// A number for a change, unless it is known not to compile.
    fn number(
        &mut self,
        file: &str,
        line: usize,
        function: &str,
        what: &str,
        text: &str,
    ) -> Option<u32> {
        let short: String = text.split_whitespace().collect::<Vec<_>>().join(" ");
        let stem = format!("{file}|{function}|{what}|{short}");
        let nth = self.seen.entry(stem.clone()).or_default();
        let key = format!("{stem}|{nth}");
        *nth += 1;
        if self.refused.contains(&key) {
            return None;
        }
        self.next += 1;
        self.changes.push(Change {
            number: self.next,
            file: file.into(),
            line,
            function: function.into(),
            what: what.into(),
            text: short,
            key,
        });
        Some(self.next)
    }

    /// Numbers for the numeric constants of a file: half as much again, and half.
    pub fn constants(&mut self, file: &str, parsed: &syn::File) -> Constants {
        let mut found = Constants::new();
        let mut items: Vec<(&syn::Ident, &Type, &Expr)> = Vec::new();
        for item in &parsed.items {
            match item {
                syn::Item::Const(c) => items.push((&c.ident, &c.ty, &c.expr)),
                syn::Item::Impl(all) => items.extend(all.items.iter().filter_map(|i| match i {
                    syn::ImplItem::Const(c) => Some((&c.ident, &c.ty, &c.expr)),
                    _ => None,
                })),
                _ => {}
            }
        }
        for (name, kind, value) in items {
            if !is_number(kind) {
                continue;
            }
            let text = format!("{name} = {}", value.to_token_stream());
            let line = name.span().start().line;
            let more = self.number(file, line, "const", "half as much again", &text);
            let less = self.number(file, line, "const", "half", &text);
            found.insert(
                name.to_string(),
                (more.unwrap_or(u32::MAX), less.unwrap_or(u32::MAX)),
            );
        }
        found
    }
}

fn is_number(kind: &Type) -> bool {
    let numbers = [
        "i64", "u32", "u64", "usize", "f64", "u16", "u8", "i32", "i128",
    ];
    numbers.contains(&kind.to_token_stream().to_string().as_str())
}

fn is_test(attributes: &[syn::Attribute]) -> bool {
    attributes.iter().any(|a| {
        let text = a.to_token_stream().to_string().replace(' ', "");
        text == "#[cfg(test)]" || text == "#[test]"
    })
}

/// Rewrites one file.
pub struct Rewriter<'a> {
    /// What is made.
    pub made: &'a mut Made,
    /// The file, below the core's `src`.
    pub file: String,
    /// The constants that are meant by their names here.
    pub constants: Constants,
    /// Whether the formulas are changed here, or only the constants used.
    pub formulas: bool,
    /// Whether anything was changed.
    pub touched: bool,
    function: String,
}

impl<'a> Rewriter<'a> {
    /// For one file.
    pub fn new(made: &'a mut Made, file: &str, constants: Constants, formulas: bool) -> Self {
        Rewriter {
            made,
            file: file.into(),
            constants,
            formulas,
            touched: false,
            function: String::new(),
        }
    }

    fn change(&mut self, span: Span, what: &str, text: &str) -> Option<u32> {
        if !self.formulas {
            return None;
        }
        let line = span.start().line;
        let number = self
            .made
            .number(&self.file, line, &self.function, what, text)?;
        self.touched = true;
        Some(number)
    }

    /// Constants named in what is handed to a macro, which is not parsed.
    fn in_macro(&mut self, tokens: TokenStream) -> TokenStream {
        let all: Vec<TokenTree> = tokens.into_iter().collect();
        let colon =
            |t: Option<&TokenTree>| matches!(t, Some(TokenTree::Punct(p)) if p.as_char() == ':');
        let mut out: Vec<TokenTree> = Vec::new();
        for (at, token) in all.iter().enumerate() {
            match token {
                TokenTree::Group(group) => {
                    let inner = self.in_macro(group.stream());
                    out.push(Group::new(group.delimiter(), inner).into());
                }
                TokenTree::Ident(name) if !colon(all.get(at + 1)) => {
                    let Some(&(more, less)) = self.constants.get(&name.to_string()) else {
                        out.push(token.clone());
                        continue;
                    };
                    // The path before the name belongs to it.
                    let mut path: Vec<TokenTree> = vec![token.clone()];
                    while out.len() >= 2 && colon(out.last()) {
                        path.insert(0, out.pop().unwrap());
                        path.insert(0, out.pop().unwrap());
                        if matches!(out.last(), Some(TokenTree::Ident(_))) {
                            path.insert(0, out.pop().unwrap());
                        }
                    }
                    let path: TokenStream = path.into_iter().collect();
                    self.touched = true;
                    out.extend(quote!((crate::changed(#more, #less, #path))));
                }
                _ => out.push(token.clone()),
            }
        }
        out.into_iter().collect()
    }

    fn literal(&mut self, lit: &syn::ExprLit) -> Option<Expr> {
        let (old, new): (TokenStream, TokenStream) = match &lit.lit {
            Lit::Int(n) => {
                let value: u128 = n.base10_parse().ok()?;
                let more = if value < 10 {
                    value + 1
                } else {
                    value + value / 2
                };
                let more = syn::LitInt::new(&format!("{more}{}", n.suffix()), n.span());
                (n.to_token_stream(), more.to_token_stream())
            }
            Lit::Float(n) => {
                let value: f64 = n.base10_parse().ok()?;
                let more = if value == 0.0 { 1.0 } else { value * 1.5 };
                let more = syn::LitFloat::new(&format!("{more:?}{}", n.suffix()), n.span());
                (n.to_token_stream(), more.to_token_stream())
            }
            _ => return None,
        };
        let number = self.change(lit.span(), &format!("{old} to {new}"), &old.to_string())?;
        Some(parse_quote!((if crate::mutant(#number) { #new } else { #old })))
    }

    fn binary(&mut self, binary: &syn::ExprBinary, text: &str) -> Option<Expr> {
        let (l, r) = (&binary.left, &binary.right);
        let op = binary.op;
        let span = op.span();
        let other: BinOp = match op {
            BinOp::Add(_) => parse_quote!(-),
            BinOp::Sub(_) => parse_quote!(+),
            BinOp::Mul(_) => parse_quote!(/),
            BinOp::Div(_) => parse_quote!(*),
            BinOp::Rem(_) => parse_quote!(/),
            BinOp::Lt(_) => parse_quote!(<=),
            BinOp::Le(_) => parse_quote!(<),
            BinOp::Gt(_) => parse_quote!(>=),
            BinOp::Ge(_) => parse_quote!(>),
            BinOp::Eq(_) => parse_quote!(!=),
            BinOp::Ne(_) => parse_quote!(==),
            BinOp::And(_) => parse_quote!(||),
            BinOp::Or(_) => parse_quote!(&&),
            BinOp::AddAssign(_) => parse_quote!(-=),
            BinOp::SubAssign(_) => parse_quote!(+=),
            _ => return None,
        };
        if has_let(l) || has_let(r) {
            return None;
        }
        let what = format!("{} to {}", op.to_token_stream(), other.to_token_stream());
        let n = self.change(span, &what, text)?;
        Some(match op {
            BinOp::And(_) => {
                parse_quote!((match (#l) { l_ => if l_ != crate::mutant(#n) { #r } else { l_ } }))
            }
            BinOp::Or(_) => {
                parse_quote!((match (#l) { l_ => if l_ != crate::mutant(#n) { l_ } else { #r } }))
            }
            BinOp::AddAssign(_) | BinOp::SubAssign(_) => {
                parse_quote!(({ let r_ = #r; if crate::mutant(#n) { #l #other r_ } else { #l #op r_ } }))
            }
            BinOp::Add(_) | BinOp::Sub(_) | BinOp::Mul(_) | BinOp::Div(_) | BinOp::Rem(_) => {
                parse_quote!((match ((#l), (#r)) { (l_, r_) => if crate::mutant(#n) { l_ #other r_ } else { l_ #op r_ } }))
            }
            _ => {
                parse_quote!((match (&(#l), &(#r)) { (l_, r_) => if crate::mutant(#n) { l_ #other r_ } else { l_ #op r_ } }))
            }
        })
    }

    fn method(&mut self, call: &syn::ExprMethodCall, text: &str) -> Option<Expr> {
        let name = call.method.to_string();
        let span = call.method.span();
        let (receiver, args) = (&call.receiver, &call.args);
        let other = match (name.as_str(), args.len()) {
            ("min", 0 | 1) => "max",
            ("max", 0 | 1) => "min",
            ("min_by_key", 1) => "max_by_key",
            ("max_by_key", 1) => "min_by_key",
            ("min_by", 1) => "max_by",
            ("max_by", 1) => "min_by",
            ("at_least", 1) => "at_most",
            ("at_most", 1) => "at_least",
            ("nearest", 1) => "at_least",
            ("ceil", 0) => "floor",
            ("round" | "floor", 0) => "ceil",
            ("div_ceil", 1) => "div_euclid",
            ("div_euclid", 1) => "div_ceil",
            ("any", 1) => "all",
            ("all", 1) => "any",
            ("abs", 0) => "clone",
            ("filter", 1) => {
                let number = self.change(span, "filter dropped", text)?;
                let kept: Expr = match &args[0] {
                    Expr::Closure(closure) => {
                        let mut closure = closure.clone();
                        let body = closure.body.clone();
                        closure.body = parse_quote!({ crate::mutant(#number) || (#body) });
                        Expr::Closure(closure)
                    }
                    path => parse_quote!(|x_| crate::mutant(#number) || (#path)(x_)),
                };
                return Some(parse_quote!(#receiver.filter(#kept)));
            }
            _ => return None,
        };
        let what = format!("{name} to {other}");
        let number = self.change(span, &what, text)?;
        let method = &call.method;
        let turbofish = &call.turbofish;
        let other = syn::Ident::new(other, span);
        if matches!(name.as_str(), "any" | "all") {
            return Some(
                parse_quote!((match (#receiver) { mut l_ => if crate::mutant(#number) { l_.#other(#args) } else { l_.#method(#args) } })),
            );
        }
        Some(
            parse_quote!((match (#receiver) { l_ => if crate::mutant(#number) { l_.#other #turbofish (#args) } else { l_.#method #turbofish (#args) } })),
        )
    }

    /// Changes within a function, and one of what it returns; a constant one stays as it is.
    fn of_function(&mut self, signature: &syn::Signature, block: &mut syn::Block) {
        if signature.constness.is_some() {
            return;
        }
        let outer = std::mem::replace(&mut self.function, signature.ident.to_string());
        visit_mut::visit_block_mut(self, block);
        self.returns(&signature.ident, &signature.output, block);
        self.function = outer;
    }

    /// A function that returns nothing, false or zero from the start.
    fn returns(&mut self, name: &syn::Ident, output: &ReturnType, block: &mut syn::Block) {
        let ReturnType::Type(_, kind) = output else {
            return;
        };
        let Type::Path(path) = &**kind else { return };
        let last = path.path.segments.last().map(|s| s.ident.to_string());
        let Some(last) = last else { return };
        let nothing: Expr = match last.as_str() {
            "Option" => parse_quote!(None),
            "Vec" => parse_quote!(Vec::new()),
            "bool" | "Length" | "i64" | "u32" | "u64" | "usize" | "u16" | "f64" | "i128" => {
                parse_quote!(Default::default())
            }
            _ => return,
        };
        let what = format!("returns no {last}");
        if let Some(number) = self.change(name.span(), &what, &name.to_string()) {
            let first: syn::Stmt = parse_quote!(if crate::mutant(#number) { return #nothing; });
            block.stmts.insert(0, first);
        }
    }
}

/// Whether `if let` or a chain of such is within, which is no value of its own.
fn has_let(expr: &Expr) -> bool {
    match expr {
        Expr::Let(_) => true,
        Expr::Binary(b) => has_let(&b.left) || has_let(&b.right),
        Expr::Paren(p) => has_let(&p.expr),
        _ => false,
    }
}

impl VisitMut for Rewriter<'_> {
    fn visit_item_mut(&mut self, item: &mut syn::Item) {
        let attributes: &[syn::Attribute] = match item {
            syn::Item::Mod(m) => &m.attrs,
            syn::Item::Fn(f) => &f.attrs,
            syn::Item::Impl(i) => &i.attrs,
            _ => &[],
        };
        let before = self.formulas;
        if is_test(attributes) {
            self.formulas = false;
        }
        visit_mut::visit_item_mut(self, item);
        self.formulas = before;
    }

    fn visit_item_fn_mut(&mut self, item: &mut syn::ItemFn) {
        self.of_function(&item.sig, &mut item.block);
    }

    fn visit_impl_item_fn_mut(&mut self, item: &mut syn::ImplItemFn) {
        self.of_function(&item.sig, &mut item.block);
    }

    fn visit_item_const_mut(&mut self, _: &mut syn::ItemConst) {}
    fn visit_impl_item_const_mut(&mut self, _: &mut syn::ImplItemConst) {}
    fn visit_item_static_mut(&mut self, _: &mut syn::ItemStatic) {}
    fn visit_item_enum_mut(&mut self, _: &mut syn::ItemEnum) {}
    fn visit_type_mut(&mut self, _: &mut Type) {}
    fn visit_pat_mut(&mut self, _: &mut syn::Pat) {}
    fn visit_attribute_mut(&mut self, _: &mut syn::Attribute) {}
    fn visit_expr_const_mut(&mut self, _: &mut syn::ExprConst) {}

    fn visit_expr_repeat_mut(&mut self, repeat: &mut syn::ExprRepeat) {
        self.visit_expr_mut(&mut repeat.expr);
    }

    fn visit_macro_mut(&mut self, call: &mut syn::Macro) {
        if !self.constants.is_empty() {
            call.tokens = self.in_macro(std::mem::take(&mut call.tokens));
        }
    }

    fn visit_expr_mut(&mut self, expr: &mut Expr) {
        // The text is that of the unchanged source.
        let text = match expr {
            Expr::Binary(_) | Expr::MethodCall(_) | Expr::Unary(_) => {
                expr.to_token_stream().to_string()
            }
            _ => String::new(),
        };
        visit_mut::visit_expr_mut(self, expr);
        let changed = match expr {
            Expr::Lit(lit) => self.literal(lit),
            Expr::Binary(binary) => self.binary(binary, &text),
            Expr::MethodCall(call) => self.method(call, &text),
            Expr::Unary(unary) if matches!(unary.op, syn::UnOp::Neg(_)) => {
                let inner = &unary.expr;
                self.change(unary.span(), "minus dropped", &text).map(
                    |n| parse_quote!((match (#inner) { l_ => if crate::mutant(#n) { l_ } else { -l_ } })),
                )
            }
            Expr::Path(path) => path.path.segments.last().and_then(|last| {
                let &(more, less) = self.constants.get(&last.ident.to_string())?;
                self.touched = true;
                Some(parse_quote!((crate::changed(#more, #less, #path))))
            }),
            _ => None,
        };
        if let Some(changed) = changed {
            *expr = changed;
        }
    }
}
