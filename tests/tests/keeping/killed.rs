//! The app killed while it keeps photos, imports and exports.

use super::*;

/// Keeps photos, puts them to a step, takes in files and hands some out, saying so after
/// each, until it is killed.
#[test]
fn part_keeper() {
    let _alone = alone();
    let Some(root) = std::env::var_os(PART).map(PathBuf::from) else {
        return;
    };
    let say = |line: String| {
        let mut out = std::io::stdout().lock();
        out.write_all(format!("{line}\n").as_bytes()).unwrap();
        out.flush().unwrap();
    };
    let mut service = serve(root.join("data"));
    assert_eq!(service.hello(START).problem, None);
    let other = record("Other", &[note("by itself")]);
    say("said ready".into());
    for n in 0..PHOTOS.len() {
        service
            .keep_photo("a", Ok(PHOTOS[n].clone()), START)
            .unwrap();
        service.act("a", &picture(n), START).unwrap();
        say(format!("said pictured {n}"));
        let name = format!("{n:032x}");
        fs::write(root.join("in"), other.clone().named(&name).text()).unwrap();
        let file = service
            .import(read_throw(&DesktopDisk, &root.join("in").into()), START)
            .unwrap()
            .file;
        service
            .decide_import(&ImportChoice::Add, file, START)
            .unwrap();
        say(format!("said added {n}"));
        let sheet = PHOTOS[n].repeat(20);
        write(&DesktopDisk, &root.join("out/sheet").into(), &sheet).unwrap();
        say(format!("said handed {n}"));
    }
}

#[test]
fn killed_while_keeping_photos_and_files() {
    let _alone = alone();
    const KILLS: usize = 60;
    let mut chance = Chance(77);
    let (mut pictured, mut added, mut handed) = (0, 0, 0);
    for kill in 0..KILLS {
        let folder = tempfile::tempdir().unwrap();
        let root = folder.path();
        lay(root, "a", record("A", &[]).text().as_bytes());
        fs::create_dir(root.join("out")).unwrap();
        let mut child = process::Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "killed::part_keeper", "--nocapture"])
            .env(PART, root)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let mut out = BufReader::new(child.stdout.take().unwrap());
        let mut said: BTreeMap<String, usize> = BTreeMap::new();
        let mut line = |said: &mut BTreeMap<String, usize>| -> bool {
            let mut line = String::new();
            if out.read_line(&mut line).unwrap_or(0) == 0 {
                return false;
            }
            let whole = line.ends_with('\n');
            if let Some((_, what)) = line.trim().split_once("said ")
                && whole
            {
                let (what, n) = what.split_once(' ').unwrap_or((what, "0"));
                said.insert(what.to_string(), n.parse().unwrap());
            }
            true
        };
        while !said.contains_key("ready") {
            assert!(line(&mut said), "it did not start");
        }
        for _ in 0..chance.below(12) {
            line(&mut said);
        }
        std::thread::sleep(Duration::from_micros(chance.below(6000)));
        // It may have ended already, which is as good.
        let _ = kill_process(Pid::from_raw(child.id() as i32).unwrap(), Signal::KILL);
        child.wait().unwrap();
        while line(&mut said) {}

        let mut service = serve(root.join("data"));
        let hello = service.hello(START);
        assert_eq!(hello.problem, None);
        for row in &hello.shelf.rows {
            let torn = row.problem.as_ref().is_none_or(|p| p.code == "torn");
            assert!(torn && row.head.is_some(), "{row:?}");
        }
        drop(service);
        let what = format!("kill {kill}");
        // Names alike are told apart by the record; here only whether it can be read counts.
        let store = desktop::store(root.join("data"));
        let id = ThrowId::parse("a").unwrap();
        let journal = store.read(Place::Throws, &id).unwrap().journal;
        let in_story = journal.photos();
        for n in 0..said.get("pictured").map_or(0, |n| n + 1) {
            let name = hash(&PHOTOS[n]);
            assert!(in_story.iter().any(|p| p.as_str() == name), "{what}: {n}");
            pictured += 1;
        }
        // Every photo in the story is there, and none is half a one.
        for photo in &in_story {
            let bytes = store.photo(&id, photo).unwrap().expect("it is there");
            assert_eq!(hash(&bytes), photo.as_str(), "{what}");
        }
        for found in fs::read_dir(root.join("data/throws/a/photos"))
            .into_iter()
            .flatten()
        {
            let path = found.unwrap().path();
            if path.extension().is_some_and(|ending| ending == "jpg") {
                let bytes = fs::read(&path).unwrap();
                assert_eq!(hash(&bytes), path.file_stem().unwrap().to_str().unwrap());
            }
        }
        let names: BTreeSet<String> = store
            .ids(Place::Throws)
            .unwrap()
            .iter()
            .map(|id| {
                store
                    .read(Place::Throws, id)
                    .unwrap()
                    .journal
                    .name()
                    .to_string()
            })
            .collect();
        for n in 0..said.get("added").map_or(0, |n| n + 1) {
            assert!(names.contains(&format!("{n:032x}")), "{what}: {n}");
            added += 1;
        }
        let sheet = fs::read(root.join("out/sheet")).ok();
        let last = said.get("handed").copied();
        handed += last.map_or(0, |n| n + 1);
        let may_be = [last, Some(last.map_or(0, |n| n + 1))];
        let fits = may_be
            .iter()
            .any(|n| sheet == n.and_then(|n| PHOTOS.get(n)).map(|photo| photo.repeat(20)));
        assert!(fits, "{what}: the sheet is neither the last nor the next");
        // And on: another photo, kept and there.
        let mut service = serve(root.join("data"));
        service
            .keep_photo("a", Ok(PHOTOS[39].clone()), START)
            .unwrap();
        service.act("a", &picture(39), START).ok();
        service.shelf_command(&ShelfCommand::Demo, START).unwrap();
        drop(service);
        let mut service = serve(root.join("data"));
        assert_eq!(service.hello(START).problem, None);
    }
    println!(
        "killed with -9 while keeping photos and files: {KILLS} kills, {pictured} photos, \
         {added} files brought, {handed} handed out acknowledged, lost: 0"
    );
    assert!(pictured > 60 && added > 30 && handed > 30);
}
