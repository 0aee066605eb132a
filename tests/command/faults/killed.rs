//! Killed at any moment: never a half result, and the old one stands until the new one is whole.
#![cfg(unix)]

use std::fs;
use std::process::Stdio;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use super::files::place;
use crate::support::command::{Place, job, skip};

const DRAFT: &[&str] = &["draft", "job.yaml", "-o", "out"];
const GRADE: &[&str] = &["grade", "job.yaml", "table.yaml", "-o", "out"];
const LAY: &[&str] = &[
    "lay", "job.yaml", "--width", "140cm", "--seed", "1", "--rounds", "3", "-o", "out",
];
const BATCH: &[&str] = &["batch", "job.yaml", "people.csv", "-o", "out", "--patterns"];

/// The files of a folder by name, with their bytes; nothing if it is not there.
fn files(place: &Place) -> Option<Vec<(String, Vec<u8>)>> {
    let folder = place.path().join("out");
    folder.exists().then(|| {
        let names = place.names("out").into_iter();
        names
            .map(|name| {
                let bytes = fs::read(folder.join(&name)).unwrap();
                (name, bytes)
            })
            .collect()
    })
}

/// What the commands make of a job.
fn made(text: &str, args: &[&str]) -> Vec<(String, Vec<u8>)> {
    let place = place();
    place.write("job.yaml", text);
    place.run(args).done();
    files(&place).unwrap()
}

/// Whether the temporary folder of a run stands here.
fn is_writing(place: &Place) -> bool {
    let names = place.names(".");
    names.iter().any(|name| name.starts_with(".blockwright-"))
}

/// A number between 0 and `below`, another one each time.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, below: u64) -> u64 {
        // Knuth's MMIX generator; The Art of Computer Programming 2, 3.3.4; value from memory.
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }
}

/// Starts a command and kills it: half the time at any moment of its run, else soon after it has
/// begun to write.
fn kill(place: &Place, args: &[&str], dice: &mut Dice, usual: Duration) {
    let mut child = place
        .command(args)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .spawn()
        .unwrap();
    let begun = Instant::now();
    if dice.roll(2) == 0 {
        let moment = u64::try_from(usual.as_micros()).unwrap() * 5 / 4;
        std::thread::sleep(Duration::from_micros(dice.roll(moment)));
    } else {
        while !is_writing(place) && child.try_wait().unwrap().is_none() {
            assert!(begun.elapsed() < Duration::from_secs(60), "{args:?}");
            std::thread::sleep(Duration::from_micros(100));
        }
        std::thread::sleep(Duration::from_micros(dice.roll(20_000)));
    }
    // By its own handle, and no matter if it has ended.
    let _ = child.kill();
    child.wait().unwrap();
    for name in place.names(".") {
        if name.starts_with(".blockwright-") {
            fs::remove_dir_all(place.path().join(name)).unwrap();
        }
    }
}

#[test]
fn a_folder_is_whole_or_the_old_one_whenever_the_command_is_killed() {
    let texts = ["title: Old\n", "title: New\n"]
        .map(|title| job("skirt").replace("title: A block\n", title));
    let mut dice = Dice(7);
    for args in [DRAFT, GRADE, LAY] {
        let [old, new] = [&texts[0], &texts[1]].map(|text| made(text, args));
        assert!(old != new);
        let place = place();
        place.write("job.yaml", &texts[1]);
        let begun = Instant::now();
        place.run(args).done();
        let usual = begun.elapsed();
        fs::remove_dir_all(place.path().join("out")).unwrap();
        let (mut none, mut whole) = (0, 0);
        for _ in 0..15 {
            kill(&place, args, &mut dice, usual);
            match files(&place) {
                None => none += 1,
                Some(found) => {
                    assert!(found == new, "{args:?}: a half folder");
                    whole += 1;
                    fs::remove_dir_all(place.path().join("out")).unwrap();
                }
            }
        }
        // Over the old result, which never is gone.
        let forced = [args, &["--force"]].concat();
        let (mut kept, mut replaced) = (0, 0);
        for _ in 0..15 {
            place.write("job.yaml", &texts[0]);
            place.run(&forced).done();
            place.write("job.yaml", &texts[1]);
            kill(&place, &forced, &mut dice, usual);
            let found = files(&place).expect("the old result or the new one");
            assert!(found == old || found == new, "{args:?}: a half folder");
            if found == old {
                kept += 1;
            } else {
                replaced += 1;
            }
        }
        eprintln!(
            "{}: {none} killed before and {whole} after; with --force {kept} and {replaced}",
            args[0]
        );
        assert!(none > 0 && kept > 0);
    }
}

#[test]
fn a_batch_is_whole_or_unfinished_whenever_it_is_killed() {
    let place = place();
    let mut table = "id,height,bust_girth,waist_girth,hip_girth\n".to_owned();
    for n in 0..40 {
        table.push_str(&format!("p{n},{},920,760,1000\n", 1600 + n));
    }
    place.write("people.csv", table);
    let begun = Instant::now();
    place.run(BATCH).done();
    let usual = begun.elapsed();
    let old = files(&place).unwrap();
    place.write("job.yaml", job("skirt") + "ease: loose\n");
    place.run(&[BATCH, &["--force"]].concat()).done();
    let new = files(&place).unwrap();
    assert!(old != new);
    let mut dice = Dice(11);
    let (mut kept, mut replaced) = (0, 0);
    for turn in 0..25 {
        // Each turn the other job, over the result of the last.
        let job = job("skirt") + if turn % 2 == 0 { "" } else { "ease: loose\n" };
        place.write("job.yaml", job);
        let before = files(&place).unwrap();
        let args = [BATCH, &["--force"]].concat();
        let mut child = place.command(&args).stdout(Stdio::null()).spawn().unwrap();
        let moment = u64::try_from(usual.as_micros()).unwrap() * 5 / 4;
        std::thread::sleep(Duration::from_micros(dice.roll(moment)));
        let _ = child.kill();
        child.wait().unwrap();
        let results = |found: &[(String, Vec<u8>)]| {
            let file = found.iter().find(|(name, _)| name == "results.jsonl");
            file.map(|(_, bytes)| bytes.clone())
        };
        let (after, wanted) = (
            files(&place).unwrap(),
            if turn % 2 == 0 { &old } else { &new },
        );
        let found = results(&after).expect("the old results or the new ones");
        assert!(
            found == results(&before).unwrap() || found == results(wanted).unwrap(),
            "half results"
        );
        if found == results(wanted).unwrap() {
            replaced += 1;
        } else {
            kept += 1;
        }
        place.run(&args).done();
        assert!(files(&place).unwrap() == *wanted);
    }
    eprintln!("batch: {kept} killed before and {replaced} after");
    assert!(kept > 0);
}

#[cfg(target_os = "linux")]
#[test]
fn while_a_result_is_replaced_its_folder_is_never_gone() {
    let place = place();
    place.run(DRAFT).done();
    let document = place.path().join("out/pattern.json");
    let (done, looks) = (AtomicBool::new(false), std::cell::Cell::new(0_u64));
    // Folders cannot be exchanged on every file system.
    if !exchanges(&place) {
        return skip("folders cannot be exchanged on this file system");
    }
    std::thread::scope(|scope| {
        scope.spawn(|| {
            for _ in 0..25 {
                place.run(&[DRAFT, &["--force"]].concat()).done();
            }
            done.store(true, Ordering::Relaxed);
        });
        let mut gone = 0;
        while !done.load(Ordering::Relaxed) {
            looks.set(looks.get() + 1);
            gone += u64::from(!document.exists());
        }
        assert_eq!(gone, 0, "of {} looks", looks.get());
    });
}

/// Whether two folders of this place can be exchanged.
#[cfg(target_os = "linux")]
fn exchanges(place: &Place) -> bool {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    let [one, other] = ["one", "other"].map(|name| place.path().join(name));
    fs::create_dir(&one).unwrap();
    fs::create_dir(&other).unwrap();
    renameat_with(CWD, &one, CWD, &other, RenameFlags::EXCHANGE).is_ok()
}
