//! Seams measured on the path data, with nothing of the library that drew them.

use kurbo::{BezPath, ParamCurve as _, ParamCurveArclen as _, Point};
use serde_json::Value;

use super::document::document;
use crate::support::command::{BODY, job, repository};

/// Length of an edge less the parts between the legs of its darts.
fn sewn(piece: &Value, edge: &str) -> f64 {
    let all = |key| piece[key].as_array().unwrap();
    let found = all("edges").iter().find(|e| e["name"] == edge).unwrap();
    let path = BezPath::from_svg(found["path"].as_str().unwrap()).unwrap();
    // Where each joint lies, and how far along.
    let mut joints: Vec<(Point, f64)> = Vec::new();
    let mut along = 0.0;
    for segment in path.segments() {
        if joints.is_empty() {
            joints.push((segment.start(), 0.0));
        }
        along += segment.arclen(1e-9);
        joints.push((segment.end(), along));
    }
    let at = |leg: &Value| {
        let leg = Point::new(leg[0].as_f64().unwrap(), leg[1].as_f64().unwrap());
        let joint = joints.iter().find(|(p, _)| p.distance(leg) < 1e-3);
        joint
            .unwrap_or_else(|| panic!("leg {leg:?} is no joint of {edge}"))
            .1
    };
    let mouths: f64 = all("darts")
        .iter()
        .filter(|dart| dart["edge"] == edge)
        .map(|dart| (at(&dart["legs"][0]) - at(&dart["legs"][1])).abs())
        .sum();
    along - mouths
}

fn side(document: &Value, edges: &Value) -> f64 {
    let pieces = document["pieces"].as_array().unwrap();
    edges
        .as_array()
        .unwrap()
        .iter()
        .map(|edge| {
            let piece = pieces.iter().find(|p| p["name"] == edge["piece"]).unwrap();
            sewn(piece, edge["edge"].as_str().unwrap())
        })
        .sum()
}

fn every_seam_matches(document: &Value, least: usize) {
    let seams = document["seams"].as_array().unwrap();
    assert!(seams.len() >= least);
    for seam in seams {
        let (a, b) = (side(document, &seam["a"]), side(document, &seam["b"]));
        let ease = seam["ease"].as_f64().unwrap();
        let longer = match seam["ease_on"].as_str() {
            Some("b") => -ease,
            _ => ease,
        };
        assert!(
            a > 50.0 && (a - b - longer).abs() < 0.01,
            "{seam}: {a} and {b}"
        );
    }
}

#[test]
fn both_sides_of_every_seam_are_equally_long() {
    let set = std::fs::read_to_string(repository("measurement-sets/ines.yaml")).unwrap();
    let indented: String = set.lines().map(|line| format!("  {line}\n")).collect();
    let ines = format!("title: T\nblock: [bodice, skirt]\nbody:\n{indented}");
    every_seam_matches(&document(&ines), 5);
    every_seam_matches(&document(&job("bodice")), 2);
    every_seam_matches(&document(&job("skirt")), 1);
}

/// A waist as wide as the hip: no dart takes up what the edge is too long.
#[test]
fn a_waist_without_darts_matches_too() {
    let straight = BODY.replace("waist_girth: 76", "waist_girth: 102");
    let straight = format!("title: T\nblock: [bodice, skirt]\nbody: {straight}\n");
    every_seam_matches(&document(&straight), 5);
}

#[test]
fn each_edge_starts_where_the_last_one_ended() {
    for piece in document(&job("[bodice, skirt]"))["pieces"]
        .as_array()
        .unwrap()
    {
        let ends: Vec<(Point, Point)> = piece["edges"]
            .as_array()
            .unwrap()
            .iter()
            .map(|edge| {
                let path = BezPath::from_svg(edge["path"].as_str().unwrap()).unwrap();
                let segments: Vec<_> = path.segments().collect();
                (segments[0].start(), segments.last().unwrap().end())
            })
            .collect();
        for (index, (_, end)) in ends.iter().enumerate() {
            let next = ends[(index + 1) % ends.len()].0;
            assert!(
                end.distance(next) < 1e-3,
                "{}: {end:?} {next:?}",
                piece["name"]
            );
        }
    }
}
