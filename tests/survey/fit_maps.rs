//! Fit maps: women in their own dresses, bodies that lean back by a known angle, sizes on a wearer.

#![allow(clippy::unwrap_used)]

use crate::support::statistics::Statistics;
use crate::support::survey::{Row, sample, taken_of, tell};
use blockwright::alterations::Request;
use blockwright::draft::{Block, DraftOptions, draft};
use blockwright::fit_map::{Advice, Band, FitMap, Origin, ThreadPlace, fit_map};
use blockwright::form::{Form, Half};
use blockwright::measurements::{Body, Measurement as M};
use blockwright::piece::Pattern;
use blockwright::recipe::{Recipe, Ways, make_for};
use blockwright::units::Unit;

/// A woman, her dress and her form. The survey's front waist length is no tape's, so that it is left out.
struct Dressed {
    body: Body,
    dress: Pattern,
    form: Form,
}

impl Dressed {
    fn of(row: &Row) -> Option<Self> {
        let mut taken = taken_of(row);
        taken.retain(|(of, _)| !matches!(of, M::NapeHeight | M::WaistHeight | M::FrontWaistLength));
        let body = Body::from_taken(taken).unwrap();
        let dress = draft(&body, &DraftOptions::of(Block::Dress)).ok()?;
        let form = Form::of(&body).ok()?;
        Some(Self { body, dress, form })
    }

    fn map(&self, pattern: &Pattern, form: &Form) -> FitMap {
        let origin = Origin {
            draft: &self.dress,
            body: &self.body,
        };
        fit_map(pattern, Some(origin), &self.body, form)
    }

    fn back(&self, pattern: &Pattern, form: &Form) -> Vec<f64> {
        let map = self.map(pattern, form);
        let back = map.stations.iter();
        let back = back.filter(|s| s.half == Half::Back && s.band == Band::ToWaist);
        back.map(blockwright::fit_map::Thread::excess).collect()
    }
}

/// In a dress drafted for her a woman's map agrees by construction, and no thread is a false alarm.
#[test]
fn women_in_their_own_dresses_are_no_alarm() {
    let rows = sample(16, 161);
    let women: Vec<Dressed> = rows.rows.iter().filter_map(Dressed::of).collect();
    assert!(women.len() * 100 >= rows.rows.len() * 97);
    let mut by_place: std::collections::BTreeMap<String, Vec<f64>> = Default::default();
    for woman in &women {
        let map = woman.map(&woman.dress, &woman.form);
        assert_eq!(map.advice, [Advice::AgreesByConstruction]);
        for station in &map.stations {
            let (band, place) = (station.band.name(), station.place.name());
            let name = format!("{:?} {band}, {place}", station.half);
            by_place.entry(name).or_default().push(station.excess());
            if station.place == ThreadPlace::Centre && station.band == Band::ToWaist {
                assert!(station.excess().abs() < 1.0, "{station:?}");
            }
        }
    }
    for (name, excess) in &by_place {
        let found = Statistics::of(excess);
        tell(&format!(
            "own dress, {name}: excess {:.1} ± {:.1} mm",
            found.mean, found.spread
        ));
        assert!(found.mean.abs() < 3.0, "{name}: {}", found.mean);
    }
}

/// A body that leans back by a known angle about a line through its sides is shorter behind it by angle
/// times distance (plane geometry): that wedge is what the map finds, less and less to the side.
#[test]
fn bodies_leaned_back_show_their_wedge() {
    let (mut near, mut all) = (0, 0);
    for row in &sample(5, 162).rows {
        let Some(woman) = Dressed::of(row) else {
            continue;
        };
        let upright = woman.back(&woman.dress, &woman.form);
        let pivot = woman.form.landmarks().waist_side.z;
        let bends_to = 0.35 * woman.form.levels().nape;
        // Mean distance of the middle of the back behind the line, over the height that bends.
        let behind: f64 = (0..40)
            .map(|step| bends_to * (f64::from(step) + 0.5) / 40.0)
            .map(|y| (pivot - woman.form.ring(y, 64).points[0].z) / 40.0)
            .sum();
        let mut last = 0.0;
        for degrees in [3.0_f64, 6.0, 9.0, 12.0, 15.0, 18.0] {
            let angle = degrees.to_radians();
            let leaned = woman.back(&woman.dress, &woman.form.leaned(angle));
            let wedge: Vec<f64> = leaned.iter().zip(&upright).map(|(a, b)| a - b).collect();
            let known = angle * behind;
            // Beyond what is ever reduced a taut thread cuts the corner: at 38 mm by 1.1 mm.
            if known > 35.0 {
                break;
            }
            all += 1;
            near += usize::from((wedge[0] - known).abs() < 1.0);
            assert!(wedge[0] > last);
            assert!(
                wedge.windows(2).all(|two| two[0] > two[1] - 0.01),
                "{wedge:?}"
            );
            assert!(wedge.last().unwrap().abs() < 0.25 * wedge[0]);
            last = wedge[0];
        }
    }
    tell(&format!("leaned: {near} of {all} wedges within 1 mm"));
    // A thread that bridges a deep hollow is nearer to the line than the back is.
    assert!(near * 20 >= all * 19, "{near} of {all}");
}

/// A wearer who leans back by a known angle has her lengths taken anew; `to: form` then shortens her
/// block by the wedge (angle times distance behind the line through her sides; plane geometry), within
/// 1 mm from 5 to 35 mm, and leaves no excess.
#[test]
fn a_reduction_to_the_form_is_the_wedge() {
    let lengths = [
        M::BackWaistLength,
        M::ScyeDepth,
        M::NeckToBustPoint,
        M::CentreFrontWaistLength,
    ];
    let mut recipe = Recipe::new("Dress", Block::Dress);
    let settings = serde_json::json!({"to": "form", "hips_checked": true});
    recipe.alterations = vec![Request::new("back_length_reduction", settings).unwrap()];
    for row in &sample(2, 163).rows {
        let Some(woman) = Dressed::of(row) else {
            continue;
        };
        let pivot = woman.form.landmarks().waist_side.z;
        let bends_to = 0.35 * woman.form.levels().nape;
        let behind: f64 = (0..40)
            .map(|step| bends_to * (f64::from(step) + 0.5) / 40.0)
            .map(|y| (pivot - woman.form.ring(y, 64).points[0].z) / 40.0)
            .sum();
        for wedge in [5.0, 15.0, 25.0, 35.0] {
            let leaned = woman.form.leaned(wedge / behind);
            let mut wearer = woman.body.clone();
            for of in lengths {
                wearer = wearer.with_taken(of, leaned.tape(of).unwrap()).unwrap();
            }
            let made = make_for(&recipe, (&woman.body, &wearer), Unit::Mm, Ways::Skipped);
            let made = made.unwrap_or_else(|error| panic!("{wedge}: {error}"));
            let amount = made.accounts[0].amount.unwrap();
            let left = woman.back(&made.pattern, &leaned)[0];
            tell(&format!(
                "wedge {wedge} mm: reduced by {amount:.2}, left {left:.2}"
            ));
            assert!((amount - wedge).abs() < 1.0, "{wedge}: {amount}");
            assert!(left.abs() < 1.0, "{wedge}: {left}");
        }
    }
}

/// A size that is longer than she is behind asks for a reduction; with a short front it does not.
#[test]
fn a_short_front_is_warned_of_before_any_reduction() {
    for row in &sample(4, 164).rows {
        let Some(woman) = Dressed::of(row) else {
            continue;
        };
        let size = |back: f64, front: f64| {
            let back = woman.body.value(M::BackWaistLength) + back;
            let front = woman.body.value(M::CentreFrontWaistLength) + front;
            woman
                .body
                .with_taken(M::BackWaistLength, back)
                .and_then(|body| body.with_taken(M::CentreFrontWaistLength, front))
                .unwrap()
        };
        let advice = |body: &Body| {
            let block = draft(body, &DraftOptions::of(Block::Dress)).unwrap();
            let origin = Origin {
                draft: &block,
                body,
            };
            fit_map(&block, Some(origin), &woman.body, &woman.form).advice
        };
        let long_back = advice(&size(15.0, 0.0));
        assert!(
            matches!(long_back[..], [Advice::ReduceBack { amount }] if (amount - 15.0).abs() <= 1.0),
            "{long_back:?}"
        );
        let both = advice(&size(15.0, -12.0));
        assert!(
            matches!(
                both[..],
                [Advice::ShortFront { amount, back_looks_long: true }] if (amount - 12.0).abs() <= 1.0
            ),
            "{both:?}"
        );
    }
}
