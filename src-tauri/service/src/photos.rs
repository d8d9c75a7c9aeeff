//! Photos prepared for the story: small, the right way up, and without anything but the picture.
//!
//! [`shrink`] reads JPEG, PNG and WebP, turns the picture as its orientation tag says
//! (Exif, CIPA DC-008), scales it to [`LONGEST_SIDE`] at most and writes it again as JPEG. The new file is made from the
//! pixels alone, so it cannot contain a place, a camera, a date, a thumbnail or a colour profile.
//!
//! A file of more than [`MOST_BYTES`] is not read to its end. A picture of more than
//! [`MOST_PIXELS`], with a side longer than [`MOST_SIDE`], or whose points would take more memory
//! than [`MOST_MEMORY`], is refused by its header, before anything is decoded. A JPEG without an
//! end is refused as well: decoders fill what is missing with grey.
//!
//! For the printed story the shell scales each photo down further ([`PAPER_SIDE`]), one after
//! another, and makes it grey for black ink. The first 100 are printed
//! (`show::sheet::MOST_PHOTOS` in the core), and the sheet says how many are left out.
//!
//! Limits: only the first frame of an animated picture is kept; colours of a wide profile come out
//! a little paler; transparent parts become white.

use image::codecs::jpeg::JpegEncoder;
use image::imageops::FilterType;
use image::{
    DynamicImage, ExtendedColorType, ImageDecoder as _, ImageEncoder as _, ImageError, ImageFormat,
    ImageReader, Limits, Rgb, RgbImage,
};
use lapwork_core::cloth::photos::PhotoId;
use sha2::{Digest as _, Sha256};
use std::io::Cursor;

// Where the limits lie is our judgement.

/// The largest file that is read.
pub const MOST_BYTES: u64 = 40 << 20;
/// The most pixels a picture may have.
pub const MOST_PIXELS: u64 = 100_000_000;
/// The longest side of a picture, in pixels. Scaling takes memory for the longer side alone.
pub const MOST_SIDE: u32 = 40_000;
/// The longer side of a stored photo, in pixels.
pub const LONGEST_SIDE: u32 = 1600;
/// The most memory unpacking may take: four bytes for each point, and room to work.
const MOST_MEMORY: u64 = 4 * MOST_PIXELS + (64 << 20);
/// How faithful the JPEG is, of 100.
const QUALITY: u8 = 82;
/// The endings of files to choose among.
pub const ENDINGS: [&str; 4] = ["jpg", "jpeg", "png", "webp"];

/// Why a file is no photo to keep.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PhotoFault {
    /// Larger than [`MOST_BYTES`].
    Large,
    /// More points than [`MOST_PIXELS`], or too much memory.
    Pixels {
        /// How many.
        have: u64,
    },
    /// A side longer than [`MOST_SIDE`].
    Side {
        /// How long.
        have: u32,
    },
    /// None of the kinds that are read.
    Kind,
    /// A kind that phones make and that is not read.
    Named(&'static str),
    /// Damaged or cut short.
    Broken,
}

/// Whether a file dropped on the window is meant as a photo, by its ending.
pub fn meant(name: &str) -> bool {
    let ending = name.rsplit_once('.').map(|(_, ending)| ending);
    // Kinds that are not read are told by their name.
    let unread = ["heic", "heif", "avif"];
    ending.is_some_and(|e| {
        let e = e.to_ascii_lowercase();
        ENDINGS.contains(&e.as_str()) || unread.contains(&e.as_str())
    })
}

/// A photo made fit to print.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PaperPhoto {
    /// It as JPEG.
    pub jpeg: Vec<u8>,
    /// Its width in points.
    pub width: u32,
    /// Its height in points.
    pub height: u32,
}

/// The longer side of what is printed, in points: 240 to the inch at half the width of a page.
pub const PAPER_SIDE: u32 = 800;

/// The longer side of a photo of a fabric where it fills squares on paper, in points: a square of
/// 5 in at a tenth of its size has 240 to the inch so.
pub const SWATCH_SIDE: u32 = 240;

/// A photo that was kept, made fit to print, its longer side as long as `side` at most; none if
/// it cannot be read.
pub fn for_paper(kept: &[u8], side: u32, black: bool) -> Option<PaperPhoto> {
    let mut reader = ImageReader::with_format(Cursor::new(kept), ImageFormat::Jpeg);
    let mut limits = Limits::default();
    limits.max_alloc = Some(MOST_MEMORY);
    reader.limits(limits);
    let mut picture = reader.decode().ok()?;
    if picture.width().max(picture.height()) > side {
        picture = picture.resize(side, side, FilterType::Triangle);
    }
    let (width, height) = (picture.width(), picture.height());
    let mut jpeg = Vec::new();
    let encoder = JpegEncoder::new_with_quality(&mut jpeg, QUALITY);
    let written = match black {
        true => encoder.write_image(&picture.to_luma8(), width, height, ExtendedColorType::L8),
        false => encoder.write_image(&picture.to_rgb8(), width, height, ExtendedColorType::Rgb8),
    };
    written.ok()?;
    Some(PaperPhoto {
        jpeg,
        width,
        height,
    })
}

/// A photo's name: the SHA-256 (FIPS 180-4) of what is kept, in lower-case hex digits.
pub fn name(bytes: &[u8]) -> Option<PhotoId> {
    let digits = Sha256::digest(bytes);
    let hex: String = digits.iter().map(|b| format!("{b:02x}")).collect();
    PhotoId::parse(&hex)
}

/// The picture in a file, made fit to keep.
///
/// # Errors
/// The [`PhotoFault`].
pub fn shrink(bytes: &[u8]) -> Result<Vec<u8>, PhotoFault> {
    let mut reader = ImageReader::new(Cursor::new(bytes))
        .with_guessed_format()
        .map_err(|_| PhotoFault::Broken)?;
    match reader.format() {
        Some(ImageFormat::Jpeg) if !jpeg_ends(bytes) => return Err(PhotoFault::Broken),
        Some(ImageFormat::Jpeg | ImageFormat::Png | ImageFormat::WebP) => {}
        _ => return Err(named(bytes).map_or(PhotoFault::Kind, PhotoFault::Named)),
    }
    let mut limits = Limits::default();
    limits.max_alloc = Some(MOST_MEMORY);
    reader.limits(limits);
    let mut decoder = reader.into_decoder().map_err(|why| fault(&why, 0))?;
    let (width, height) = decoder.dimensions();
    let have = u64::from(width) * u64::from(height);
    if have > MOST_PIXELS {
        return Err(PhotoFault::Pixels { have });
    }
    if have == 0 {
        return Err(PhotoFault::Broken);
    }
    let side = width.max(height);
    if side > MOST_SIDE {
        return Err(PhotoFault::Side { have: side });
    }
    if decoder.total_bytes() > MOST_MEMORY {
        return Err(PhotoFault::Pixels { have });
    }
    // A senseless tag leaves the picture unturned.
    let orientation = decoder.orientation();
    let mut picture = DynamicImage::from_decoder(decoder).map_err(|why| fault(&why, have))?;
    if width.max(height) > LONGEST_SIDE {
        picture = picture.resize(LONGEST_SIDE, LONGEST_SIDE, FilterType::Triangle);
    }
    if let Ok(orientation) = orientation {
        picture.apply_orientation(orientation);
    }
    let mut out = Vec::new();
    JpegEncoder::new_with_quality(&mut out, QUALITY)
        .encode_image(&on_white(&picture))
        .map_err(|why| fault(&why, have))?;
    Ok(out)
}

/// Whether this is a JPEG as Lapwork keeps one, which may come from elsewhere: of at most
/// [`LONGEST_SIDE`], whole, and with nothing beside the picture but the JFIF header and a colour
/// profile.
pub(crate) fn is_small(bytes: &[u8]) -> bool {
    const SCAN: u8 = 0xDA;
    if !bytes.starts_with(&[0xFF, 0xD8]) || !jpeg_ends(bytes) {
        return false;
    }
    let mut longest = None;
    let mut at = 2;
    // The segments before the picture, each with its marker and length.
    while let Some(&[0xFF, marker, high, low]) = bytes.get(at..at + 4) {
        match marker {
            SCAN => break,
            // Application segments but APP0 and APP2, and comments.
            0xE1 | 0xE3..=0xEF | 0xFE => return false,
            // A frame, with its height and width after a byte for the precision.
            0xC0..=0xC3 | 0xC5..=0xC7 | 0xC9..=0xCB | 0xCD..=0xCF => {
                let Some(&[h1, h2, w1, w2]) = bytes.get(at + 5..at + 9) else {
                    return false;
                };
                let side = u16::from_be_bytes([h1, h2]).max(u16::from_be_bytes([w1, w2]));
                longest = longest.max(Some(side));
            }
            _ => {}
        }
        at += 2 + usize::from(u16::from_be_bytes([high, low]));
    }
    longest.is_some_and(|side| (1..=LONGEST_SIDE).contains(&u32::from(side)))
}

/// The name of a kind of picture that phones make and that is not read, by its file type box
/// (ISO/IEC 14496-12): HEIC (ISO/IEC 23008-12) or AVIF.
fn named(bytes: &[u8]) -> Option<&'static str> {
    let length = usize::try_from(u32::from_be_bytes(bytes.get(..4)?.try_into().ok()?)).ok()?;
    if bytes.get(4..8)? != b"ftyp" {
        return None;
    }
    // The brands: the first, four bytes for a version, then all it is compatible with.
    let end = length.min(bytes.len()).min(1024);
    let brands = bytes.get(8..end)?.chunks_exact(4);
    let brands: Vec<&[u8]> = brands.collect();
    let any = |of: &[&[u8; 4]]| brands.iter().any(|b| of.iter().any(|o| *b == o.as_slice()));
    if any(&[b"avif", b"avis"]) {
        return Some("AVIF");
    }
    any(&[
        b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1",
    ])
    .then_some("HEIC")
}

/// Whether a JPEG (ITU-T T.81, annex B) goes on to its end of image: one that was cut short does
/// not. What follows the end is not looked at.
fn jpeg_ends(bytes: &[u8]) -> bool {
    const END: u8 = 0xD9;
    const SCAN: u8 = 0xDA;
    let mut at = 2;
    loop {
        // A marker; any number of fill bytes may precede it.
        let Some(0xFF) = bytes.get(at) else {
            return false;
        };
        while bytes.get(at) == Some(&0xFF) {
            at += 1;
        }
        let Some(marker) = bytes.get(at).copied() else {
            return false;
        };
        at += 1;
        match marker {
            END => return true,
            // These have no length.
            0x01 | 0xD0..=0xD8 => continue,
            _ => {}
        }
        let Some(&[high, low]) = bytes.get(at..at + 2) else {
            return false;
        };
        at += usize::from(u16::from_be_bytes([high, low]));
        if marker == SCAN {
            // Entropy-coded data: a marker in it is stuffed with 0, or it is a restart.
            loop {
                let rest = bytes.get(at..).unwrap_or_default();
                let Some(next) = rest.iter().position(|b| *b == 0xFF) else {
                    return false;
                };
                match rest.get(next + 1) {
                    Some(0x00 | 0xD0..=0xD7) => at += next + 2,
                    Some(0xFF) => at += next + 1,
                    Some(_) => {
                        at += next;
                        break;
                    }
                    None => return false,
                }
            }
        }
    }
}

fn fault(why: &ImageError, have: u64) -> PhotoFault {
    match why {
        ImageError::Limits(_) => PhotoFault::Pixels { have },
        ImageError::Unsupported(_) => PhotoFault::Kind,
        _ => PhotoFault::Broken,
    }
}

/// The picture without anything to see through.
fn on_white(picture: &DynamicImage) -> RgbImage {
    if !picture.color().has_alpha() {
        return picture.to_rgb8();
    }
    let seen = picture.to_rgba8();
    RgbImage::from_fn(seen.width(), seen.height(), |x, y| {
        let [r, g, b, a] = seen.get_pixel(x, y).0;
        let over = |c: u8| {
            let (c, a) = (u32::from(c), u32::from(a));
            ((c * a + 255 * (255 - a) + 127) / 255) as u8
        };
        Rgb([over(r), over(g), over(b)])
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desktop::DesktopDisk;
    use crate::import::read_photo;
    use crate::store::StoreError;
    use exif::{In, Tag};
    use std::fs::File;

    /// A picture of four coloured quarters: red, green above blue, white.
    fn quarters(width: u32, height: u32) -> RgbImage {
        RgbImage::from_fn(width, height, |x, y| {
            match (x < width / 2, y < height / 2) {
                (true, true) => Rgb([220, 30, 30]),
                (false, true) => Rgb([30, 200, 30]),
                (true, false) => Rgb([30, 30, 220]),
                (false, false) => Rgb([250, 250, 250]),
            }
        })
    }

    fn encoded(picture: &RgbImage, format: ImageFormat) -> Vec<u8> {
        let mut out = Cursor::new(Vec::new());
        picture.write_to(&mut out, format).unwrap();
        out.into_inner()
    }

    /// An Exif block, by hand after CIPA DC-008: orientation, a camera's name, and a place
    /// (latitude 48° 12′ 30″ north).
    fn exif_block(orientation: u8) -> Vec<u8> {
        let mut tiff = b"II*\0\x08\0\0\0".to_vec();
        let entry = |out: &mut Vec<u8>, tag: u16, kind: u16, count: u32, value: [u8; 4]| {
            out.extend(tag.to_le_bytes());
            out.extend(kind.to_le_bytes());
            out.extend(count.to_le_bytes());
            out.extend(value);
        };
        // First directory: 3 entries, at 8; ends at 8 + 2 + 36 + 4 = 50.
        tiff.extend(3u16.to_le_bytes());
        entry(&mut tiff, 0x010F, 2, 8, 50u32.to_le_bytes());
        entry(&mut tiff, 0x0112, 3, 1, [orientation, 0, 0, 0]);
        entry(&mut tiff, 0x8825, 4, 1, 58u32.to_le_bytes());
        tiff.extend(0u32.to_le_bytes());
        tiff.extend(b"Testcam\0");
        // The directory of the place, at 58: 2 entries; ends at 58 + 2 + 24 + 4 = 88.
        tiff.extend(2u16.to_le_bytes());
        entry(&mut tiff, 0x0001, 2, 2, *b"N\0\0\0");
        entry(&mut tiff, 0x0002, 5, 3, 88u32.to_le_bytes());
        tiff.extend(0u32.to_le_bytes());
        for (n, d) in [(48u32, 1u32), (12, 1), (30, 1)] {
            tiff.extend(n.to_le_bytes());
            tiff.extend(d.to_le_bytes());
        }
        tiff
    }

    /// A JPEG with an Exif block and a comment put in behind its first marker.
    fn tagged(picture: &RgbImage, orientation: u8) -> Vec<u8> {
        let plain = encoded(picture, ImageFormat::Jpeg);
        assert_eq!(plain[..2], [0xFF, 0xD8]);
        let mut segment = b"Exif\0\0".to_vec();
        segment.extend(exif_block(orientation));
        let mut out = plain[..2].to_vec();
        for (marker, body) in [(0xE1, segment), (0xFE, b"made at home".to_vec())] {
            out.extend([0xFF, marker]);
            out.extend((body.len() as u16 + 2).to_be_bytes());
            out.extend(body);
        }
        out.extend(&plain[2..]);
        out
    }

    fn holds(bytes: &[u8], what: &[u8]) -> bool {
        bytes.windows(what.len()).any(|w| w == what)
    }

    fn read(bytes: &[u8]) -> RgbImage {
        assert_eq!(bytes[..3], [0xFF, 0xD8, 0xFF], "it is a JPEG");
        image::load_from_memory(bytes).unwrap().to_rgb8()
    }

    #[test]
    fn place_and_camera_are_gone() {
        let given = tagged(&quarters(64, 48), 1);
        // An independent reader finds what was put in.
        let reader = exif::Reader::new();
        let found = reader
            .read_from_container(&mut Cursor::new(&given))
            .unwrap();
        let place = found.get_field(Tag::GPSLatitude, In::PRIMARY).unwrap();
        assert_eq!(place.display_value().to_string(), "48 deg 12 min 30 sec");
        assert!(found.get_field(Tag::Make, In::PRIMARY).is_some());

        let kept = shrink(&given).unwrap();
        let none = reader.read_from_container(&mut Cursor::new(&kept));
        assert!(none.is_err(), "there is Exif in it");
        for trace in [
            &b"Exif"[..],
            b"Testcam",
            b"made at home",
            b"ICC_PROFILE",
            b"http",
        ] {
            assert!(!holds(&kept, trace), "{}", String::from_utf8_lossy(trace));
        }
        // No application segment but the JFIF header, and no comment.
        for marker in (0xE1..=0xEF).chain([0xFE]) {
            let head = &kept[..kept.len().min(700)];
            assert!(!holds(head, &[0xFF, marker]), "marker {marker:x}");
        }
    }

    #[test]
    fn the_picture_is_turned_as_its_tag_says() {
        // What comes to lie at the top left and the top right, after the Exif table.
        let (red, green, blue, white) =
            ([220, 30, 30], [30, 200, 30], [30, 30, 220], [250, 250, 250]);
        for (orientation, left, right) in [
            (1, red, green),
            (2, green, red),
            (3, white, blue),
            (4, blue, white),
            (5, red, blue),
            (6, blue, red),
            (7, white, green),
            (8, green, white),
        ] {
            let kept = read(&shrink(&tagged(&quarters(80, 40), orientation)).unwrap());
            let size = if orientation < 5 { (80, 40) } else { (40, 80) };
            assert_eq!(kept.dimensions(), size, "orientation {orientation}");
            let near = |x: u32, want: [u8; 3]| {
                let have = kept.get_pixel(x, 8).0;
                have.iter().zip(want).all(|(a, b)| a.abs_diff(b) < 25)
            };
            assert!(near(8, left), "orientation {orientation}, left");
            assert!(near(size.0 - 8, right), "orientation {orientation}, right");
        }
    }

    #[test]
    fn large_ones_are_made_small_and_small_ones_left() {
        for (width, height, want) in [
            (2000, 500, (1600, 400)),
            (400, 3200, (200, 1600)),
            (90, 60, (90, 60)),
        ] {
            let given = encoded(&quarters(width, height), ImageFormat::Png);
            assert_eq!(read(&shrink(&given).unwrap()).dimensions(), want);
        }
        let webp = encoded(&quarters(90, 60), ImageFormat::WebP);
        assert_eq!(read(&shrink(&webp).unwrap()).dimensions(), (90, 60));
    }

    #[test]
    fn what_is_seen_through_is_laid_on_white() {
        let clear = image::RgbaImage::from_pixel(16, 16, image::Rgba([0, 0, 0, 0]));
        let mut out = Cursor::new(Vec::new());
        clear.write_to(&mut out, ImageFormat::Png).unwrap();
        let kept = read(&shrink(out.get_ref()).unwrap());
        assert!(kept.pixels().all(|p| p.0.iter().all(|c| *c > 250)));
    }

    /// A PNG whose head promises far more points than it holds.
    fn bomb(width: u32, height: u32) -> Vec<u8> {
        let mut out = b"\x89PNG\r\n\x1a\n".to_vec();
        let mut chunk = |kind: &[u8; 4], body: &[u8]| {
            out.extend((body.len() as u32).to_be_bytes());
            let mut sum = kind.to_vec();
            sum.extend(body);
            out.extend(&sum);
            out.extend(crc32(&sum).to_be_bytes());
        };
        let mut head = width.to_be_bytes().to_vec();
        head.extend(height.to_be_bytes());
        head.extend([8, 2, 0, 0, 0]);
        chunk(b"IHDR", &head);
        chunk(b"IDAT", &[0x78, 0x9C, 0x03, 0, 0, 0, 0, 1]);
        chunk(b"IEND", &[]);
        out
    }

    /// The CRC of PNG (ISO/IEC 15948, annex D).
    fn crc32(bytes: &[u8]) -> u32 {
        !bytes.iter().fold(u32::MAX, |crc, byte| {
            (0..8).fold(crc ^ u32::from(*byte), |crc, _| {
                (crc >> 1) ^ (0xEDB8_8320 & (crc & 1).wrapping_neg())
            })
        })
    }

    #[test]
    fn a_bomb_is_refused_by_its_head() {
        let began = std::time::Instant::now();
        let refused = shrink(&bomb(60_000, 60_000));
        assert!(
            matches!(refused, Err(PhotoFault::Pixels { .. })),
            "{refused:?}"
        );
        let just_over = shrink(&bomb(10_001, 10_000));
        let have = 100_010_000;
        assert_eq!(just_over, Err(PhotoFault::Pixels { have }));
        assert!(began.elapsed().as_secs() < 5, "nothing was unpacked");
        // A small one of the same make is only damaged.
        assert_eq!(shrink(&bomb(8, 8)), Err(PhotoFault::Broken));
    }

    #[test]
    fn a_picture_of_one_long_row_is_refused_by_its_head() {
        // Within the bound of points, but scaling it took 16 bytes for each.
        let have = 100_000_000;
        assert_eq!(shrink(&bomb(have, 1)), Err(PhotoFault::Side { have }));
        assert_eq!(shrink(&bomb(1, have)), Err(PhotoFault::Side { have }));
        assert_eq!(shrink(&bomb(MOST_SIDE, 1)), Err(PhotoFault::Broken));
        // 8 bytes for each point are more than is allowed for.
        let mut deep = bomb(10_000, 10_000);
        deep[24] = 16;
        let sum = crc32(&deep[12..29]).to_be_bytes();
        deep[29..33].copy_from_slice(&sum);
        let have = 100_000_000;
        assert_eq!(shrink(&deep), Err(PhotoFault::Pixels { have }));
    }

    #[test]
    fn a_jpeg_that_was_cut_short_is_refused_wherever_it_was_cut() {
        let plain = encoded(&quarters(90, 60), ImageFormat::Jpeg);
        let whole = tagged(&quarters(90, 60), 6);
        for whole in [plain, whole] {
            assert!(shrink(&whole).is_ok());
            for end in (3..whole.len()).step_by(7).chain([whole.len() - 1]) {
                assert_eq!(shrink(&whole[..end]), Err(PhotoFault::Broken), "{end}");
            }
            // What a camera writes behind the picture does no harm.
            let mut more = whole.clone();
            more.extend(b"\0\0 more of the maker's own");
            assert!(shrink(&more).is_ok());
        }
        for format in [ImageFormat::Png, ImageFormat::WebP] {
            let whole = encoded(&quarters(90, 60), format);
            for end in [whole.len() / 2, whole.len() * 3 / 4, whole.len() - 20] {
                assert_eq!(
                    shrink(&whole[..end]),
                    Err(PhotoFault::Broken),
                    "{format:?} {end}"
                );
            }
        }
    }

    #[test]
    fn what_phones_make_and_is_not_read_is_told_by_its_name() {
        let head = |first: &[u8; 4], more: &[&[u8; 4]]| {
            let length = 16 + 4 * more.len() as u32;
            let mut out = length.to_be_bytes().to_vec();
            out.extend(b"ftyp");
            out.extend(first);
            out.extend([0; 4]);
            more.iter().for_each(|brand| out.extend(*brand));
            out.extend([7; 40]);
            out
        };
        for (bytes, fault) in [
            (
                head(b"heic", &[b"mif1", b"heic"]),
                PhotoFault::Named("HEIC"),
            ),
            (head(b"mif1", &[b"heic"]), PhotoFault::Named("HEIC")),
            (
                head(b"avif", &[b"mif1", b"miaf"]),
                PhotoFault::Named("AVIF"),
            ),
            (head(b"mif1", &[b"avif"]), PhotoFault::Named("AVIF")),
            (head(b"isom", &[b"mp41"]), PhotoFault::Kind),
        ] {
            assert_eq!(shrink(&bytes), Err(fault));
        }
        for name in ["a.heic", "b.HEIF", "c.avif", "d.jpg"] {
            assert!(meant(name), "{name}");
        }
        assert!(!meant("throw.jsonl"));
    }

    #[test]
    fn other_files_are_refused_for_what_they_are() {
        let whole = encoded(&quarters(64, 64), ImageFormat::Jpeg);
        let gif = b"GIF89a\x01\0\x01\0\0\0\0;";
        for (bytes, fault) in [
            (&b""[..], PhotoFault::Kind),
            (b"not a picture", PhotoFault::Kind),
            (gif, PhotoFault::Kind),
            (b"%PDF-1.7", PhotoFault::Kind),
            (&whole[..30], PhotoFault::Broken),
            (b"\xFF\xD8\xFF\xE0", PhotoFault::Broken),
        ] {
            assert_eq!(
                shrink(bytes),
                Err(fault),
                "{:?}",
                String::from_utf8_lossy(bytes)
            );
        }
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("large.jpg");
        File::create(&path)
            .unwrap()
            .set_len(MOST_BYTES + 1)
            .unwrap();
        let fault = match read_photo(&DesktopDisk, &path.as_path().into()) {
            Err(StoreError::Photo { fault, .. }) => fault,
            other => panic!("{other:?}"),
        };
        assert_eq!(fault, PhotoFault::Large);
        let none = read_photo(&DesktopDisk, &folder.path().join("none.jpg").into());
        assert!(matches!(none, Err(StoreError::Disk { .. })));
    }

    #[test]
    fn any_bytes_are_taken_calmly() {
        let given = tagged(&quarters(40, 40), 6);
        for at in (0..given.len()).step_by(11) {
            let mut bent = given.clone();
            bent[at] ^= 0x5A;
            // Whatever comes of it, it is an answer.
            let _ = shrink(&bent);
        }
    }

    #[test]
    fn a_name_is_the_hash_of_the_content() {
        // FIPS 180-4 example, as in NIST's SHA256 sample computations.
        let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(name(b"abc").unwrap().as_str(), abc);
    }
}
