//! A whole session, from an empty form to what is cut by.

use std::fs;
use std::path::Path;
use std::time::Instant;

use serde_json::{Value, json};

use crate::browser::Browser;
use crate::served::Served;
use crate::statics;
use crate::support::command::Place;

const FOUR: [(&str, &str); 4] = [
    ("height", "168"),
    ("bust_girth", "92"),
    ("waist_girth", "76"),
    ("hip_girth", "100"),
];

#[test]
fn from_an_empty_form_to_a_printed_pattern() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let place = Place::new();
    let served = Served::start(Some(place.path()));
    let began = Instant::now();
    browser.open(&served.address());
    assert_eq!(
        browser.value("location.hash"),
        "",
        "the token leaves the address bar"
    );
    eprintln!("page ready after {:?}", began.elapsed());
    the_wearer(&browser);
    the_pattern(&browser);
    the_fitting(&browser);
    undone_and_done_again(&browser);
    what_comes_out(&browser, &place);
    reloaded_and_reopened(&browser, &place, &served);
    two_pages(&browser, &place, &served);
    every_size_and_everybody(&browser);
    a_block_of_ones_own(&browser);
    a_job_that_cannot_be_read(&browser, &place, &served);
    from_static_files(&browser, &place);
}

fn the_wearer(browser: &Browser) {
    // Nobody yet: what is needed is said, a probable body is drawn.
    browser.until("document.querySelector('#m-height').placeholder !== ''");
    browser.until("document.querySelector('.figure svg') !== null");
    for (name, value) in FOUR {
        browser.type_in(&format!("#m-{name}"), value);
    }
    browser.until("document.querySelector('#m-arm_length-row').classList.contains('estimated')");
    let estimate = browser.value("document.querySelector('#m-arm_length').placeholder");
    assert!(
        estimate.as_str().unwrap().parse::<f64>().is_ok(),
        "{estimate}"
    );
    assert!(browser.text("#m-arm_length-spread").starts_with("± "));
    // The figure is hers, and shows the field in focus.
    browser.click("#m-back_waist_length");
    browser.until("document.querySelector('.figure-words h2').textContent === 'Back waist length'");
    assert_eq!(browser.text(".figure-words .kind"), "Seen from the back");
    // Doubtful, in the unit of the page.
    browser.type_in("#m-back_waist_length", "50");
    browser
        .until("document.querySelector('#m-back_waist_length-row').classList.contains('doubtful')");
    assert!(browser.text("#m-back_waist_length-note").contains("cm"));
    browser.click("label:has(#unit-in)");
    browser.until("document.querySelector('#m-bust_girth').value === '36 1/4'");
    browser
        .until("document.querySelector('#m-back_waist_length-note').textContent.includes(' in')");
    // Bad input is said beside its field, and nothing else is lost.
    for (bad, said) in [("much", "much"), ("4", "is impossible: it lies between")] {
        browser.retype("#m-back_waist_length", bad);
        browser.until("document.querySelector('#m-back_waist_length').getAttribute('aria-invalid') === 'true'");
        browser.until(&format!(
            "document.querySelector('#m-back_waist_length-note').textContent.includes({})",
            json!(said)
        ));
    }
    browser.retype("#m-back_waist_length", "15 7/8");
    browser.until(
        "document.querySelector('#m-back_waist_length').getAttribute('aria-invalid') === 'false'",
    );
    browser
        .until("document.querySelector('#m-back_waist_length-row').className === 'measure taken'");
    browser.click("label:has(#unit-cm)");
    browser.until("document.querySelector('#m-back_waist_length').value === '40.3'");
    browser.type_in("#wearer-name", "Ines");
}

fn the_pattern(browser: &Browser) {
    browser.click("#tab-pattern");
    browser.type_in("#job-title", "Linen <dress>");
    browser.until("document.querySelectorAll('#board .piece').length === 3");
    let outline = "document.querySelector('#board .paper').getAttribute('d')";
    let before = browser.value(outline);
    browser.click("label:has(#fit-close)");
    browser.until(&format!("{outline} !== {before}"));
    browser.click("label:has(#sleeve-none)");
    browser.until("document.querySelectorAll('#board .piece').length === 2");
    browser.click("label:has(#sleeve-long)");
    browser.until("document.querySelectorAll('#board .piece').length === 3");
    // An edge and the one it is sewn to light up.
    browser.choose("#edge", "back|side_seam");
    assert_eq!(
        browser.value("document.querySelector('#board .lit').dataset.piece"),
        "back"
    );
    assert_eq!(
        browser.value("document.querySelector('#board .partner').dataset.piece"),
        "front"
    );
    let said = browser.text("#readout");
    assert!(
        said.contains("Back, side seam") && said.contains("sewn to front side seam"),
        "{said}"
    );
    // By keys: nearer, aside, all of it again.
    let view = || browser.value("document.querySelector('#board').getAttribute('viewBox')");
    let whole = view();
    browser.script("document.querySelector('#board').focus()", Vec::new());
    browser.type_in("#board", "+");
    let near = view();
    assert_ne!(near, whole);
    browser.type_in("#board", "\u{e014}");
    assert_ne!(view(), near);
    browser.type_in("#board", "0");
    assert_eq!(view(), whole);
    // What is typed wrong is said, and the pattern stays.
    browser.type_in("#length", "long\n");
    browser.until("document.querySelector('#length-wrong') !== null");
    browser.retype("#length", "60\n");
    browser.until("document.querySelector('#length-wrong') === null");
    // Where no pattern can be drawn, why not stands in its place on every part of the page.
    browser.retype("#length", "1\n");
    browser.until("document.querySelector('#table .problems') !== null");
    browser.click("#tab-fitting");
    browser.until("document.querySelector('#table .problems') !== null");
    browser.click("#tab-pattern");
    browser.retype("#length", "60\n");
    browser.until("document.querySelectorAll('#board .piece').length === 3");
    browser.until("document.querySelector('.report .warnings') !== null");
    browser.click("#printed");
    browser.until("document.querySelector('#board image') !== null");
    browser.click("#printed");
    browser.until("document.querySelector('#board .piece') !== null");
}

fn the_fitting(browser: &Browser) {
    // From part to part by keys.
    browser.type_in("#tab-pattern", "\u{e014}");
    browser.until("document.activeElement.id === 'tab-fitting'");
    browser.click("#seen summary");
    browser.type_in("#sign-words", "folds back waist");
    browser.click("#sign-folds_small_of_back");
    browser.type_in("#sign-amount", "2");
    browser.click(".sign button.main");
    browser.until("document.querySelectorAll('.card').length === 1");
    browser.until("document.querySelectorAll('#board .before').length === 3");
    // The account and the ways stand side by side; another way is one press.
    browser.until("document.querySelector('.account') !== null && document.querySelector('#way-shared') !== null");
    browser.click("label:has(#way-shared)");
    browser.until("document.querySelector('tr.chosen #way-shared') !== null");
    // The slider ends at the most that holds.
    let ends = || browser.value("(document.querySelector('.ends')?.textContent ?? '')");
    browser.until("Number(document.querySelector('.card input[type=range]').max) > 22");
    let most = browser
        .value("Number(document.querySelector('.card input[type=range]').max)")
        .as_f64()
        .unwrap();
    assert!(ends().as_str().unwrap().contains("cm"));
    let least = browser
        .value("Number(document.querySelector('.card input[type=range]').min)")
        .as_f64()
        .unwrap();
    assert!(least < -10.0);
    browser.slide(".card input[type=range]", least);
    browser.until("document.querySelector('.account h2').textContent.includes('−')");
    browser
        .until("document.querySelectorAll('#fit-map .excess, #fit-map .form-figure').length > 9");
    let map = "document.querySelector('#fit-map .map-pieces').textContent";
    let before = browser.value(map);
    browser.slide(".card input[type=range]", most);
    browser.until("document.querySelector('.account h2').textContent.includes('by')");
    browser.until(&format!("{map} !== {before}"));
    assert_eq!(
        browser.value("document.querySelector('.card.refused')"),
        Value::Null
    );
    // More than that is refused with the way out, and the way out is one press.
    browser.retype(".amount input[type=text]", "30\n");
    browser.until("document.querySelector('.card.refused button.quiet') !== null");
    browser.click(".card.refused button.quiet");
    browser.until("document.querySelector('.card.refused') === null");
    browser.retype(".amount input[type=text]", "1.5\n");
    browser.until("document.querySelector('.card input[type=range]').value === '15'");
    browser.type_in(".card input[type=range]", "\u{e012}");
    browser.until("document.querySelector('.amount input[type=text]').value === '1.45'");
    browser.until("document.querySelector('.account h2').textContent.includes('1.45')");
    for name in ["waist_girth", "upper_arm"] {
        browser.choose("#step-name", name);
        browser.click("#add-step");
    }
    browser.until("document.querySelectorAll('.card').length === 3");
    // Off, on one side, in another place.
    browser.click(".card:nth-child(3) .card-head input");
    browser.until("document.querySelectorAll('.card.off').length === 1");
    browser.click(".card:nth-child(2) summary");
    browser.click(".card:nth-child(2) label:has(input[value=left])");
    browser.until("document.querySelectorAll('#board .piece').length === 5");
    browser.click(".card:nth-child(3) .keys button");
    browser.until("document.querySelector('.card:nth-child(2)').classList.contains('off')");
}

fn undone_and_done_again(browser: &Browser) {
    let work = "sessionStorage.getItem('blockwright-work')";
    let now = || -> Value { serde_json::from_str(browser.value(work).as_str().unwrap()).unwrap() };
    let last = now();
    let mut back = 0;
    while browser.value("document.querySelector('#undo').disabled") == false {
        browser.script("document.querySelector('#undo').click()", Vec::new());
        back += 1;
        assert!(back < 200);
    }
    let first = now();
    assert!(
        first["now"]["steps"].as_array().unwrap().is_empty()
            && first["now"]["taken"].as_object().unwrap().is_empty()
    );
    for _ in 0..back {
        browser.script("document.querySelector('#redo').click()", Vec::new());
    }
    assert_eq!(
        now()["now"],
        last["now"],
        "after {back} steps back and forth"
    );
}

fn what_comes_out(browser: &Browser, place: &Place) {
    browser.click("#save");
    browser.until("document.querySelector('#notice').textContent.startsWith('Saved')");
    browser.until("document.querySelector('#state .saved') !== null");
    browser.click("#tab-out");
    browser.choose("#paper", "letter");
    browser.click("#make-pages");
    let pdf = browser.downloaded("pattern-letter.pdf");
    for (what, name) in [
        ("svg", "pattern.svg"),
        ("dxf", "pattern.dxf"),
        ("document", "pattern.json"),
        ("sheet", "pattern-sheet.pdf"),
    ] {
        browser.click(&format!("#make-{what}"));
        browser.downloaded(name);
    }
    browser.click("#make-lay");
    browser.until("document.querySelector('img.made')?.naturalWidth > 0");
    // What the command makes of the saved work is, byte for byte, what was printed: the tests of
    // printing measure the squares and lines of that.
    assert!(
        fs::read_to_string(place.path().join("job.yaml"))
            .unwrap()
            .contains("body: wearer.yaml")
    );
    place
        .run(&[
            "draft", "job.yaml", "-o", "out", "--paper", "letter", "--dxf",
        ])
        .done();
    for name in [
        "pattern-letter.pdf",
        "pattern.svg",
        "pattern.json",
        "pattern.dxf",
        "pattern-sheet.pdf",
    ] {
        let from_page = fs::read(pdf.with_file_name(name)).unwrap();
        let from_command = fs::read(place.path().join("out").join(name)).unwrap();
        assert!(from_page == from_command, "{name} differs");
    }
    browser.click("#save");
    browser.until("document.querySelector('#state .saved') !== null");
}

/// What the work is, without names that a step is known by on a page alone.
fn plain(browser: &Browser) -> Value {
    let text = browser.value("sessionStorage.getItem('blockwright-work')");
    let mut work: Value = serde_json::from_str(text.as_str().unwrap()).unwrap();
    let mut work = work["now"].take();
    for step in work["steps"].as_array_mut().unwrap() {
        step.as_object_mut().unwrap().remove("id");
    }
    // Numbers of a set are written as numbers.
    for value in work["taken"].as_object_mut().unwrap().values_mut() {
        *value = json!(
            value
                .as_str()
                .unwrap()
                .trim_end_matches(".0 cm")
                .trim_end_matches(" cm")
        );
    }
    // What is usual of a print is not said by a page that was not asked.
    work["print"] = work["print"]["paper"].take();
    for key in ["cloth", "taken"] {
        work.as_object_mut().unwrap().remove(key);
    }
    work
}

fn reloaded_and_reopened(browser: &Browser, place: &Place, served: &Served) {
    let board = "document.querySelector('#board .cloth').innerHTML";
    browser.click("#tab-pattern");
    browser.until("document.querySelectorAll('#board .piece').length === 5");
    let (work, drawn) = (plain(browser), browser.value(board));
    browser.reload();
    browser.until("document.querySelectorAll('#board .piece').length === 5");
    assert_eq!(plain(browser), work, "reloaded");
    assert!(browser.value(board) == drawn, "reloaded");
    // A page that knows nothing but the folder.
    browser.second();
    browser.open(&served.address());
    browser.click("#tab-pattern");
    browser.until("document.querySelectorAll('#board .piece').length === 5");
    assert_eq!(plain(browser), work, "reopened");
    assert!(browser.value(board) == drawn, "reopened");
    assert!(place.path().join("wearer.yaml").exists());
}

fn two_pages(browser: &Browser, place: &Place, _: &Served) {
    // The second is warned at once, and does not write over what the first saves meanwhile.
    browser.until("document.querySelector('#state .warned') !== null");
    place.write(
        "job.yaml",
        fs::read_to_string(place.path().join("job.yaml"))
            .unwrap()
            .replace("Linen", "Woollen"),
    );
    browser.type_in("#job-title", " mine");
    browser.click("#save");
    browser.until("document.querySelector('dialog[open]') !== null");
    assert!(
        fs::read_to_string(place.path().join("job.yaml"))
            .unwrap()
            .contains("Woollen")
    );
    browser.click("dialog button:first-of-type");
    browser.until("document.querySelector('#title').textContent === 'Woollen <dress>'");
}

/// A block brought along as a document and as a drawing: drawn, altered, saved, and left again.
fn a_block_of_ones_own(browser: &Browser) {
    let place = Place::new();
    let served = Served::start(Some(place.path()));
    place.write(
        "hers.yaml",
        "title: Hers\nblock: dress\nbody: {unit: cm, measurements: {height: 168, bust_girth: 92, waist_girth: 76, hip_girth: 100}}\n",
    );
    let pieces = |count: usize| {
        browser.until(&format!(
            "document.querySelectorAll('#board .piece').length === {count}"
        ));
    };
    let document = place.run(&["check", "hers.yaml", "--document"]).done();
    let mine = place.write("My dress.json", &document);
    fs::remove_file(place.path().join("hers.yaml")).unwrap();
    browser.open(&served.address());
    browser.click("#tab-pattern");
    browser.until("document.querySelector('#block-skirt') !== null");
    browser.click("label:has(#block-skirt)");
    browser.pick("#own-block", &[&mine]);
    pieces(2);
    browser.until("document.querySelector('#draft-again') !== null");
    // Nobody was measured: it is made for the wearer in the document.
    browser.click("#tab-fitting");
    browser.until("document.querySelector('#fit') !== null");
    browser.choose("#step-name", "hip_girth");
    browser.click("#add-step");
    browser.until("document.querySelector('.card') !== null");
    browser.click("#save");
    browser.until("document.querySelector('#notice').textContent.includes('Saved')");
    let job = fs::read_to_string(place.path().join("job.yaml")).unwrap();
    assert!(
        job.contains("own-block.json") && job.contains("hip_girth"),
        "{job}"
    );
    let kept = fs::read_to_string(place.path().join("own-block.json")).unwrap();
    assert!(kept == document, "the block is kept as it came");
    place.run(&["check", "job.yaml"]).done();
    // A drawing says for which kind of block it stands.
    browser.click("#tab-pattern");
    let drawing = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/own-block.svg");
    browser.pick("#own-block", &[&drawing]);
    browser.until("document.querySelector('#own-kind')?.value === 'skirt'");
    browser.click("#tab-wearer");
    for (name, value) in FOUR {
        browser.type_in(&format!("#m-{name}"), value);
    }
    browser.click("#tab-pattern");
    browser.until("document.querySelector('#board [data-piece=back]') !== null");
    browser.click("#draft-again");
    browser.until("document.querySelector('#block-skirt:checked') !== null");
}

/// What is wrong in a folder's job is said, and it is not written over without being asked.
fn a_job_that_cannot_be_read(browser: &Browser, place: &Place, served: &Served) {
    let job = fs::read_to_string(place.path().join("job.yaml")).unwrap();
    let broken = job.replace("block: dress", "block: drss");
    assert_ne!(broken, job);
    place.write("job.yaml", &broken);
    browser.second();
    browser.open(&served.address());
    browser.until("document.querySelector('#desk .problems')?.textContent.includes('drss')");
    browser.click("#tab-wearer");
    for (name, value) in FOUR {
        browser.type_in(&format!("#m-{name}"), value);
    }
    browser.click("#save");
    browser.until("document.querySelector('dialog[open]') !== null");
    let kept = fs::read_to_string(place.path().join("job.yaml")).unwrap();
    assert_eq!(kept, broken);
    browser.click("dialog button.main");
    place.write("job.yaml", job);
}

/// Narrow, enlarged, and read by a machine that looks for barriers.
fn every_size_and_everybody(browser: &Browser) {
    let axe = std::env::var_os("BLOCKWRIGHT_AXE")
        .map(|path| fs::read_to_string(Path::new(&path)).unwrap());
    if axe.is_none() {
        eprintln!("SKIPPED: BLOCKWRIGHT_AXE names no axe.min.js, barriers were not looked for");
    }
    // 320 pixels are what 1280 are at 400 %.
    for (width, height) in [(1280, 900), (500, 844)] {
        browser.size(width, height);
        for tab in ["wearer", "pattern", "fitting", "out"] {
            browser.click(&format!("#tab-{tab}"));
            browser.until("document.querySelector('#desk').children.length > 0");
            let over =
                "document.documentElement.scrollWidth - document.documentElement.clientWidth";
            assert!(
                browser.value(over).as_i64().unwrap() <= 0,
                "{tab} at {width}"
            );
            if let Some(axe) = &axe {
                browser.script(axe, Vec::new());
                browser.script(
                    "window.barriers = null; axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']}).then((r) => \
                     { window.barriers = r.violations.map((v) => `${v.impact} ${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' ')}`); })",
                    Vec::new(),
                );
                browser.until("window.barriers !== null");
                assert_eq!(
                    browser.value("window.barriers"),
                    json!([]),
                    "{tab} at {width}"
                );
            }
        }
    }
    browser.size(1280, 900);
}

/// The same page with the library in place of the server: the same files, byte for byte.
fn from_static_files(browser: &Browser, place: &Place) {
    let Some(folder) = statics::folder() else {
        return;
    };
    browser.open(&statics::host(folder));
    let work = place.path();
    browser.pick(
        "#open",
        &[&work.join("job.yaml"), &work.join("wearer.yaml")],
    );
    browser.until("document.querySelector('#title').textContent === 'Woollen <dress>'");
    browser.click("#tab-out");
    browser.click("#make-document");
    let made = browser.downloaded("pattern (1).json");
    let document = place.run(&["check", "job.yaml", "--document"]).done();
    assert!(
        fs::read_to_string(made).unwrap() == document,
        "the pattern differs"
    );
    browser.click("#make-pages");
    browser.downloaded("pattern-letter (1).pdf");
    // A size of a table is fitted to her in one press.
    let table = "name: A range\nunit: cm\ncommon: {height: 168}\nsizes:\n  '40': {bust_girth: 92, waist_girth: 72, hip_girth: 96}\n";
    let sizes = place.write("sizes.yaml", table);
    browser.click("#tab-fitting");
    browser.pick(".fit button", &[&sizes]);
    browser.until("document.querySelectorAll('.card').length > 4");
    browser.until("document.querySelector('#fit') !== null");
    browser.until("document.querySelector('.fitted').textContent.includes('waist_girth')");
}
