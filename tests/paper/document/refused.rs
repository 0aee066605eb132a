//! Documents that are damaged, doctored or of another kind: each is refused with its place, and
//! with what to do.

use super::garments::rich;
use blockwright::render::json::{DocumentError, PatternDocument, ShapeFault};
use serde_json::{Value, json};

/// The document changed, as a program would change it.
fn changed(change: impl FnOnce(&mut Value)) -> String {
    let mut value: Value = serde_json::from_str(&rich().text()).unwrap();
    change(&mut value);
    serde_json::to_string(&value).unwrap()
}

fn refused(text: &str) -> DocumentError {
    match PatternDocument::read_proved(text.as_bytes()) {
        Err(error) => error,
        Ok(_) => panic!("it was read"),
    }
}

/// The error of a changed document, with words that it must have.
fn message(change: impl FnOnce(&mut Value), words: &[&str]) -> DocumentError {
    let error = refused(&changed(change));
    let said = error.to_string();
    for word in words {
        assert!(said.contains(word), "`{word}` in: {said}");
    }
    assert!(!super::own_words(&said).contains("NaN"), "{said}");
    error
}

#[test]
fn other_formats_and_versions_say_what_to_do() {
    assert!(matches!(refused(""), DocumentError::EndsEarly { .. }));
    assert!(matches!(
        refused("{,}"),
        DocumentError::NotJson { line: 1, .. }
    ));
    assert!(matches!(refused("[]"), DocumentError::NotAPattern { .. }));
    assert!(matches!(refused("{}"), DocumentError::NotAPattern { .. }));
    message(|d| d["format"] = json!("cake"), &["`cake`", "pattern.json"]);
    message(|d| d["format"] = json!(7), &["a number"]);
    message(
        |d| d["version"] = json!(1),
        &["version 1", "draft the pattern again"],
    );
    message(|d| d["version"] = json!(3), &["version 3", "newer program"]);
    message(|d| d["version"] = json!(2.5), &["version 2.5"]);
    message(|d| d["version"] = json!("2"), &["a text"]);
    message(|d| d["units"] = json!("in"), &["/units", "`in`", "`mm`"]);
}

#[test]
fn a_text_cut_short_anywhere_is_refused() {
    let text = rich().text();
    let whole = text.trim_end();
    for share in 0..200 {
        let mut at = whole.len() * share / 200;
        while !whole.is_char_boundary(at) {
            at -= 1;
        }
        let error = refused(&whole[..at]);
        assert!(matches!(error, DocumentError::EndsEarly { .. }), "{error}");
        assert!(error.to_string().contains("copy it again"));
    }
}

#[test]
fn faults_of_shape_have_their_place() {
    let no_press = |d: &mut Value| {
        let dart = d["pieces"][0]["darts"][0].as_object_mut().unwrap();
        dart.remove("press");
    };
    let error = message(no_press, &["/pieces/0/darts/0", "`press`"]);
    assert!(matches!(
        error,
        DocumentError::Shape {
            fault: ShapeFault::Missing { .. },
            ..
        }
    ));
    message(
        |d| d["pieces"][1]["colour"] = json!("red"),
        &["/pieces/1", "`colour`", "unknown"],
    );
    message(
        |d| d["seams"][0]["ease"] = json!("NaN"),
        &["/seams/0/ease", "a number"],
    );
    message(
        |d| d["pieces"][0]["grain"] = json!([[1, 2]]),
        &["/pieces/0/grain", "a list of 2"],
    );
    message(
        |d| d["pieces"][0]["edges"][0]["role"] = json!("fol"),
        &["role", "`fol`", "`fold`"],
    );
    message(
        |d| d["pieces"][0]["cut"] = json!("twice"),
        &["/pieces/0/cut", "`pair`"],
    );
    message(
        |d| d["pieces"][0]["darts"][0]["apexes"] = json!([]),
        &["apexes", "one apex or two"],
    );
    message(
        |d| d["girths"]["bust"] = json!(null),
        &["/girths/bust", "an object"],
    );
    message(
        |d| d["body"]["bust_grith"] = json!({"value": 900, "source": "taken"}),
        &["bust_girth"],
    );
    message(|d| d["title"] = json!(["a"]), &["/title", "a text"]);
    let twice = rich()
        .text()
        .replacen("\"units\"", "\"title\": \"a\", \"units\"", 1);
    let error = refused(&twice);
    assert!(
        error.to_string().contains("`title` is there twice"),
        "{error}"
    );
    let twice = rich()
        .text()
        .replacen("\"bust\": {", "\"waist\": {}, \"bust\": {", 1);
    let error = refused(&twice);
    assert!(error.to_string().contains("/girths"), "{error}");
}

#[test]
fn doctored_pieces_are_refused() {
    let path = |d: &mut Value, text: &str| d["pieces"][0]["edges"][1]["path"] = json!(text);
    message(|d| path(d, "M0 0"), &["/pieces/0/edges/1/path"]);
    message(|d| path(d, "M0 0LNaN 4"), &["/pieces/0/edges/1/path"]);
    message(
        |d| path(d, "M0 0L1e9 4"),
        &["/pieces/0/edges/1/path", "100000 mm"],
    );
    message(|d| path(d, "M0 0L10 4"), &["/pieces/0", "open between"]);
    let far = json!([1e300, 0]);
    message(
        |d| d["pieces"][0]["grain"][0] = far,
        &["/pieces/0", "grain"],
    );
    let same = |d: &mut Value| {
        let name = d["pieces"][0]["edges"][0]["name"].clone();
        d["pieces"][0]["edges"][1]["name"] = name;
    };
    message(same, &["/pieces/0", "is there twice"]);
    let pieces = |d: &mut Value| {
        let piece = d["pieces"][0].clone();
        d["pieces"].as_array_mut().unwrap().push(piece);
    };
    message(pieces, &["is there twice"]);
    message(
        |d| d["pieces"][0]["darts"][0]["edge"] = json!("waste"),
        &["/pieces/0", "waste"],
    );
    message(
        |d| d["pieces"][0]["notches"][0]["at"] = json!(-5),
        &["/pieces/0", "notch"],
    );
    message(
        |d| d["seams"][0]["a"][0]["piece"] = json!("cape"),
        &["cape"],
    );
    message(
        |d| d["girths"]["bust"]["runs"][0]["name"] = json!("bast"),
        &["bast"],
    );
    let side = |d: &mut Value| {
        let pieces = d["pieces"].as_array_mut().unwrap();
        let one = pieces.iter_mut().find(|p| p["side"] == "left").unwrap();
        one["side"] = json!("right");
    };
    message(side, &["side"]);
    let face = |d: &mut Value| {
        let pieces = d["pieces"].as_array_mut().unwrap();
        let mirrored = pieces.iter_mut().find(|p| p["face_down"] == true);
        mirrored.unwrap()["cut"] = json!("pair");
    };
    message(face, &["/face_down"]);
}

/// Moves the first leg of the first dart that opens on an edge.
fn move_a_leg(d: &mut Value) {
    let pieces = d["pieces"].as_array_mut().unwrap();
    let darts = pieces
        .iter_mut()
        .flat_map(|p| p["darts"].as_array_mut().unwrap());
    for dart in darts.filter(|dart| dart["edge"].is_string()) {
        dart["legs"][0][0] = json!(dart["legs"][0][0].as_f64().unwrap() + 0.5);
    }
}

#[test]
fn doctored_figures_are_refused() {
    message(move_a_leg, &["dart opens on", "mm off it"]);
    let error = message(
        |d| d["girths"]["bust"]["finished"] = json!(1100.0),
        &["/girths/bust/finished", "1100.00 mm"],
    );
    assert!(matches!(error, DocumentError::Figure { .. }));
    // A girth whose body was changed agrees with itself no longer: a rule finds it.
    let error = message(|d| d["girths"]["bust"]["body"] = json!(850.0), &["bust"]);
    assert!(matches!(error, DocumentError::Unsewable { .. }));
    let error = message(|d| d["seams"][0]["ease"] = json!(9.0), &["cannot be sewn"]);
    assert!(matches!(error, DocumentError::Unsewable { .. }));
    message(|d| d["allowance"] = json!(null), &["/pieces/0/cut_line"]);
    message(
        |d| d["allowance"]["default"] = json!(14.0),
        &["/pieces/0/cut_line"],
    );
    message(
        |d| d["allowance"]["default"] = json!(-1.0),
        &["/allowance/default"],
    );
    message(
        |d| d["allowance"]["edges"]["brim"] = json!(4.0),
        &["/allowance/edges/brim"],
    );
    message(
        |d| d["pieces"][0]["cut_line"] = json!(null),
        &["/pieces/0/cut_line"],
    );
}

/// An edge drawn longer, its ends where they were: no key is wrong, only the seam.
#[test]
fn a_doctored_length_breaks_a_rule() {
    let mut document = rich();
    document.cut = None;
    document.accounts.clear();
    let mut value: Value = serde_json::from_str(&document.text()).unwrap();
    let sides = value["pieces"][0]["edges"].as_array_mut().unwrap();
    let side = sides.iter_mut().find(|e| e["name"] == "side_seam").unwrap();
    let path = side["path"].as_str().unwrap().to_owned();
    let start = path[1..].split(['L', 'C']).next().unwrap();
    let numbers: Vec<f64> = start.split(' ').map(|n| n.parse().unwrap()).collect();
    let out = format!("M{start}L{} {}L{start}", numbers[0] + 3.0, numbers[1]);
    side["path"] = json!(out + &path[1 + start.len()..]);
    let error = refused(&value.to_string());
    let DocumentError::Unsewable { violations } = error else {
        panic!("{error}")
    };
    assert!(
        violations.iter().any(|v| v.law() == "seams_match"),
        "{violations:?}"
    );
}
