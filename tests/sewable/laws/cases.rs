//! Garments that meet the laws, and for each law garments spoiled against it.

use super::doctor::{edges, move_point, piece, redraw};
use super::garment::{at, garment, line, skirt, skirt_without_dart};
use blockwright::geometry::{Curve, Point};
use blockwright::piece::*;

type Spoil = Box<dyn Fn(&mut PatternParts)>;
type Case = (&'static str, Spoil);

fn case(what: &'static str, spoil: impl Fn(&mut PatternParts) + 'static) -> Case {
    (what, Box::new(spoil))
}

/// Garments that meet every law.
pub fn sound() -> Vec<(&'static str, PatternParts)> {
    let mut fewer_darts = garment();
    fewer_darts.pieces[2] = skirt_without_dart("skirt_back", EdgeName::CENTRE_BACK);
    fewer_darts.girths.remove(0);
    let mut joined_twice = garment();
    piece(&mut joined_twice, "upper", |p| {
        let own = Notch {
            name: "balance".into(),
            edge: EdgeName::new("right"),
            at: 200.0,
            kind: NotchKind::Double,
        };
        p.notches.push(own);
    });
    let mut eased_joint = garment();
    for x in [0.0, 250.0] {
        move_point(&mut eased_joint, "shift", at(x, 1000.0), at(x, 1004.0));
    }
    piece(&mut eased_joint, "shift", |p| p.notches[0].at = 402.0);
    let panel = eased_joint
        .seams
        .iter_mut()
        .find(|s| s.name == "panel")
        .unwrap();
    (panel.ease, panel.ease_on) = (4.0, Some(EaseOn::A));
    // A pair sewn to its own mirror image down the middle.
    let right = EdgeRef::new("upper", EdgeName::new("right"));
    joined_twice
        .seams
        .push(Seam::plain("middle", right.clone(), right));
    vec![
        ("the whole garment", garment()),
        ("a skirt without darts under a bodice with one", fewer_darts),
        ("a pair sewn to itself", joined_twice),
        ("a notch that meets a joint, eased", eased_joint),
    ]
}

/// Makes the upper edge of the lower panel a sleeve cap with so much ease on a side.
fn capped(p: &mut PatternParts, ease: f64, on: EaseOn) {
    let joint = EdgeName::new("joint");
    edges(p, "lower", |all| {
        for edge in all {
            if edge.name() == &joint {
                *edge = Edge::new(EdgeName::SLEEVE_CAP, edge.role(), edge.curve().clone());
            }
        }
    });
    let seam = p.seams.iter_mut().find(|s| s.name == "joint").unwrap();
    seam.b[0].edge = EdgeName::SLEEVE_CAP;
    (seam.ease, seam.ease_on) = (ease, Some(on));
}

/// Marks that lie on darts. The bust dart opens 80 mm down the side seam of the bodice front.
fn marks() -> Vec<Case> {
    let notched = |at: f64| {
        move |p: &mut PatternParts| {
            piece(p, "bodice_front", |p| {
                p.notches.push(Notch {
                    name: "balance".into(),
                    edge: EdgeName::SIDE_SEAM,
                    at,
                    kind: NotchKind::Single,
                });
            });
        }
    };
    vec![
        case("a notch beside a dart leg", notched(79.5)),
        case("a notch in the mouth of a dart", notched(85.0)),
        case("a drill point on the leg of another dart", |p| {
            piece(p, "bodice_front", |p| {
                let [bust, waist] = [&p.darts[0], &p.darts[1]];
                let on = waist.legs[0].midpoint(waist.apex());
                let mouth = bust.legs[0].midpoint(bust.legs[1]);
                let inside = bust.drill_points().next().unwrap().at.distance(bust.apex());
                let tip = on + (on - mouth).normalize() * inside;
                p.darts[0].apexes = Apexes::One(tip);
            });
        }),
    ]
}

/// Garments spoiled against a law.
pub fn doctored(law: &str) -> Vec<Case> {
    match law {
        "size_sane" => vec![
            case("a line of twenty metres", |p| {
                piece(p, "shift", |p| {
                    p.lines[0].curve = line(at(0.0, 0.0), at(2e4, 0.0))
                });
            }),
            case("a corner past all measure", |p| {
                move_point(p, "lower", at(80.0, 600.0), at(9e4, 600.0));
            }),
        ],
        "outline_simple" => outlines(),
        "edges_smooth" => vec![case("a kink in the side seam", |p| {
            let side = [at(250.0, 0.0), at(255.0, 80.0), at(250.0, 600.0)];
            redraw(
                p,
                "skirt_back",
                &EdgeName::SIDE_SEAM,
                Curve::polyline(&side).unwrap(),
            );
        })],
        "one_way" => waves(),
        "fold_straight" => folds(),
        "square_to_fold" => vec![
            case("a hem dipping at the fold", |p| {
                move_point(p, "skirt_back", at(0.0, 600.0), at(0.0, 620.0));
            }),
            case("a neckline rising at the fold", |p| {
                move_point(p, "bodice_front", at(0.0, 50.0), at(0.0, 58.0));
            }),
            case("a waist falling at the fold", |p| {
                move_point(p, "bodice_front", at(0.0, 400.0), at(0.0, 410.0));
            }),
        ],
        "darts_true" => darts(),
        "mouths_flush" => vec![
            case("a straight mouth", |p| flatten(p, 1)),
            case("a seam line with a corner at the dart", |p| flatten(p, 3)),
            case("a slanting dart pressed to the wrong side", |p| {
                piece(p, "bodice_front", |p| {
                    p.darts[0].pressed = Pressed::TowardFirstLeg
                });
            }),
            case("a side seam that bends where the bust dart closes", |p| {
                move_point(p, "bodice_front", at(250.0, 400.0), at(240.0, 400.0));
            }),
        ],
        "seams_match" => vec![
            case("ease that is not a number", |p| p.seams[0].ease = f64::NAN),
            case("endless ease", |p| p.seams[0].ease = f64::INFINITY),
            case("negative ease", |p| p.seams[0].ease = -6.0),
            case("ease on no side", |p| p.seams[0].ease_on = None),
            case("ease on the wrong side", |p| {
                p.seams[0].ease_on = Some(EaseOn::B)
            }),
            case("a side seam too long", |p| {
                move_point(p, "skirt_back", at(250.0, 600.0), at(250.0, 600.2));
            }),
            case("nothing to sew to", |p| p.seams[1].b.clear()),
        ],
        "cap_ease" => vec![
            case("a cap too long by more than can be eased", |p| {
                capped(p, 75.0, EaseOn::B)
            }),
            case("an armscye longer than its cap", |p| {
                capped(p, 4.0, EaseOn::A)
            }),
        ],
        "smooth_joins" => vec![
            case("an armscye with a dip at the underarm", |p| {
                move_point(p, "bodice_back", at(250.0, 210.0), at(250.0, 200.0));
            }),
            case("a hem with a point at the side", |p| {
                move_point(p, "skirt_front", at(250.0, 600.0), at(250.0, 615.0));
            }),
            case("a corner between two panels", |p| {
                move_point(p, "lower", at(80.0, 0.0), at(80.0, 8.0));
            }),
        ],
        "notches_meet" => vec![
            case("a notch without a partner", |p| {
                piece(p, "bodice_front", |p| {
                    p.notches.retain(|n| n.name != "side")
                });
            }),
            case("a notch moved", |p| {
                piece(p, "bodice_back", |p| p.notches[0].at += 0.5)
            }),
            case("a notch ahead by more than the ease", |p| {
                piece(p, "bodice_back", |p| p.notches[1].at = 67.0);
            }),
            case("a notch behind the eased side", |p| {
                piece(p, "bodice_back", |p| p.notches[1].at = 58.0);
            }),
            case("a notch that meets no joint", |p| {
                piece(p, "shift", |p| p.notches[0].at = 420.0);
            }),
            case("single against double", |p| {
                piece(p, "bodice_back", |p| p.notches[0].kind = NotchKind::Double);
            }),
        ],
        "marks_clear" => marks(),
        "waists_meet" => vec![
            case("a skirt dart nearer the centre", |p| {
                p.pieces[2] = skirt("skirt_back", EdgeName::CENTRE_BACK, 97.0);
            }),
            case("a front skirt dart nearer the side", |p| {
                p.pieces[3] = skirt("skirt_front", EdgeName::CENTRE_FRONT, 104.0);
            }),
        ],
        "girths_as_asked" => vec![
            case("another body", |p| p.girths[0].body += 5.0),
            case("ease that is not a number", |p| p.girths[1].ease = f64::NAN),
            case("measured along nothing", |p| p.girths[0].runs.clear()),
            case("measured along no width", |p| {
                piece(p, "shift", |p| {
                    p.lines[0].curve = line(at(9.0, 400.0), at(9.001, 400.0))
                });
            }),
        ],
        _ => vec![],
    }
}

/// Replaces what the waist of the bodice back has from its first leg on by straight lines:
/// through the mouth only (1), or from the second leg to the centre (3).
fn flatten(parts: &mut PatternParts, from: usize) {
    let waist = parts.pieces[0]
        .outline()
        .edge(&EdgeName::WAIST)
        .unwrap()
        .curve()
        .clone();
    let dart = parts.pieces[0].dart("waist").unwrap().clone();
    let [first, second] = dart.legs.map(|leg| waist.joint_at(leg).unwrap());
    let (head, mouth) = (
        waist.part(0.0, first).unwrap(),
        waist.part(first, second).unwrap(),
    );
    let tail = waist.part(second, waist.length()).unwrap();
    let curve = if from == 1 {
        head.then(&line(dart.legs[0], dart.legs[1]))
            .unwrap()
            .then(&tail)
    } else {
        head.then(&mouth)
            .unwrap()
            .then(&line(dart.legs[1], waist.end()))
    };
    redraw(parts, "bodice_back", &EdgeName::WAIST, curve.unwrap());
}

fn outlines() -> Vec<Case> {
    vec![
        case("an outline that crosses itself", |p| {
            move_point(p, "skirt_back", at(250.0, 600.0), at(-50.0, 300.0));
        }),
        case("an outline turned round", |p| {
            edges(p, "upper", |edges| {
                edges.reverse();
                for edge in edges {
                    *edge = Edge::new(edge.name().clone(), edge.role(), edge.curve().reversed());
                }
            });
        }),
        case("an edge without length", |p| {
            edges(p, "lower", |edges| {
                let nothing = line(at(80.0, 0.0), at(80.0, 0.0));
                edges.insert(
                    1,
                    Edge::new(EdgeName::new("nothing"), EdgeRole::Seam, nothing),
                );
            });
        }),
        case("a spike on the hem", |p| {
            let points = [
                at(250.0, 600.0),
                at(100.0, 600.0),
                at(100.0, 650.0),
                at(100.0, 600.0),
                at(0.0, 600.0),
            ];
            redraw(
                p,
                "skirt_back",
                &EdgeName::HEM,
                Curve::polyline(&points).unwrap(),
            );
        }),
    ]
}

/// Lines with the ends and directions of sound ones that bend back between them.
fn waves() -> Vec<Case> {
    let curve = |p: &PatternParts, at: usize, edge: &EdgeName| {
        let outline = p.pieces[at].outline();
        outline.edge(edge).unwrap().curve().clone()
    };
    vec![
        case("an armscye with a handle past its corner", move |p| {
            let old = curve(p, 0, &EdgeName::ARMSCYE);
            let (from, to) = (old.start(), old.end());
            let leave = old.start_direction() * 260.0;
            let wave = Curve::hermite(from, leave, to, old.end_direction() * 20.0);
            redraw(p, "bodice_back", &EdgeName::ARMSCYE, wave.unwrap());
        }),
        case("an armscye bulging half way down", move |p| {
            let old = curve(p, 1, &EdgeName::ARMSCYE);
            let (from, to) = (old.start(), old.end());
            let middle = from.lerp(to, 0.45) + (to - from).normalize() * 2.0;
            let along = (to - from) * 0.2;
            let upper = Curve::hermite(from, old.start_direction() * 40.0, middle, along);
            let lower = Curve::hermite(middle, along, to, old.end_direction() * 40.0);
            let bulge = middle.x - from.x;
            assert!(bulge > 0.0);
            redraw(
                p,
                "bodice_front",
                &EdgeName::ARMSCYE,
                upper.unwrap().then(&lower.unwrap()).unwrap(),
            );
        }),
        case("a neckline that swings up before the shoulder", move |p| {
            let old = curve(p, 1, &EdgeName::NECKLINE);
            let (from, to) = (old.start(), old.end());
            let arrive = old.end_direction() * 140.0;
            let wave = Curve::hermite(from, old.start_direction() * 20.0, to, arrive);
            redraw(p, "bodice_front", &EdgeName::NECKLINE, wave.unwrap());
        }),
    ]
}

fn folds() -> Vec<Case> {
    vec![
        case("a fold that bows", |p| {
            let bow = Curve::cubic(
                at(0.0, 600.0),
                at(-1.0, 400.0),
                at(-1.0, 200.0),
                at(0.0, 0.0),
            );
            redraw(p, "skirt_back", &EdgeName::CENTRE_BACK, bow.unwrap());
        }),
        case("a fold lost", |p| {
            edges(p, "skirt_back", |edges| {
                let old = edges.pop().unwrap();
                edges.push(Edge::new(
                    old.name().clone(),
                    EdgeRole::Seam,
                    old.curve().clone(),
                ));
            });
        }),
        case("a pair with a fold", |p| {
            piece(p, "skirt_back", |p| p.cut = Cut::Pair)
        }),
        case("a grain askew", |p| {
            piece(p, "skirt_back", |p| p.grain[0].x += 20.0)
        }),
        case("a grain off the cloth", |p| {
            piece(p, "skirt_back", |p| {
                p.grain = [at(-20.0, 500.0), at(-20.0, 100.0)]
            });
        }),
        case("a grain running out of the cloth", |p| {
            piece(p, "bodice_back", |p| {
                p.grain = [at(210.0, 380.0), at(210.0, 30.0)]
            });
        }),
        case("a grain too short", |p| {
            piece(p, "upper", |p| p.grain = [at(30.0, 120.0), at(30.0, 20.0)]);
        }),
        case("no grain", |p| {
            piece(p, "upper", |p| p.grain = [at(30.0, 20.0); 2])
        }),
    ]
}

fn darts() -> Vec<Case> {
    let apex = |name: &'static str, to: Point| {
        move |p: &mut PatternParts| piece(p, name, |p| p.darts[0].apexes = Apexes::One(to))
    };
    let shift = |change: fn(&mut Dart)| {
        move |p: &mut PatternParts| piece(p, "shift", |p| change(&mut p.darts[0]))
    };
    vec![
        case("legs of two lengths", apex("bodice_back", at(103.0, 260.0))),
        case(
            "an apex off the cloth",
            apex("skirt_back", at(100.0, 700.0)),
        ),
        case("a dart too wide", apex("bodice_back", at(100.0, 395.0))),
        case(
            "nothing taken in",
            shift(|d| d.legs = [at(100.0, 400.0); 2]),
        ),
        case(
            "apexes changed about",
            shift(|d| {
                d.apexes = Apexes::Two(at(100.0, 520.0), at(100.0, 250.0));
            }),
        ),
        case(
            "legs above both apexes",
            shift(|d| d.legs = [at(88.0, 200.0), at(112.0, 200.0)]),
        ),
        case("a leg off the cloth", shift(|d| d.legs[0].x = -5.0)),
        case("one dart through another", |p| {
            piece(p, "shift", |p| {
                let mut other = p.darts[0].clone();
                other.name = "second".into();
                other.legs = [at(105.0, 420.0), at(130.0, 420.0)];
                p.darts.push(other);
            });
        }),
        case("one dart within another", |p| {
            piece(p, "shift", |p| {
                let mut other = p.darts[0].clone();
                other.name = "second".into();
                other.legs = [at(98.0, 400.0), at(102.0, 400.0)];
                other.apexes = Apexes::Two(at(100.0, 380.0), at(100.0, 420.0));
                p.darts.push(other);
            });
        }),
    ]
}
