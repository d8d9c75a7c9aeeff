//! Gathers the letters of the sheet and compresses them: of all that come with the typesetter only
//! the families that the sheet is set in, and of those only the faces it can choose. Semibold is
//! never asked for.

use flate2::Compression;
use flate2::write::ZlibEncoder;
use std::error::Error;
use std::fmt::Write as _;
use std::io::Write as _;
use std::path::PathBuf;
use std::{env, fs};
use ttf_parser::{Face, Weight, name_id};

/// Families beside Noto Sans that the sheet is set in.
const FAMILIES: [&str; 2] = ["Libertinus Serif", "DejaVu Sans Mono"];

/// Whether the sheet may be set in this face.
fn wanted(bytes: &[u8]) -> Result<bool, Box<dyn Error>> {
    let face = Face::parse(bytes, 0)?;
    let weight = matches!(face.weight(), Weight::Normal | Weight::Bold);
    let names = face.names().into_iter();
    let mut families = names
        .filter(|name| matches!(name.name_id, name_id::FAMILY | name_id::TYPOGRAPHIC_FAMILY))
        .filter_map(|name| name.to_string());
    Ok(weight && families.any(|family| FAMILIES.contains(&family.as_str())))
}

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo:rerun-if-changed=build.rs");
    let mut faces: Vec<&[u8]> = vec![
        notosans::REGULAR_TTF,
        notosans::BOLD_TTF,
        notosans::ITALIC_TTF,
        notosans::BOLD_ITALIC_TTF,
    ];
    for bytes in typst_assets::fonts() {
        if wanted(bytes)? {
            faces.push(bytes);
        }
    }
    let folder = PathBuf::from(env::var("OUT_DIR")?);
    let mut list = String::from("[\n");
    for (n, bytes) in faces.iter().enumerate() {
        let file = folder.join(format!("face-{n}"));
        let mut packed = ZlibEncoder::new(Vec::new(), Compression::best());
        packed.write_all(bytes)?;
        fs::write(&file, packed.finish()?)?;
        writeln!(list, "    ({}, include_bytes!({file:?})),", bytes.len())?;
    }
    list.push_str("]\n");
    fs::write(folder.join("faces.rs"), list)?;
    Ok(())
}
