//! The page as a whole: words stay apart and on the paper, whatever the history.

use super::compose::compose;
use super::font::Fonts;
use super::layout::{LABEL_SIZE, WIDTH};
use super::scene::{Area, Scene, Shape};
use super::{PlotError, PlotRequest};
use crate::plan::clearance_history::{ClearanceHistory, ClearancePoint, InSeat, Moment, MomentKind};
use crate::quantity::{Cases, Length, System, Time};
use proptest::prelude::*;
use uom::si::length::micrometer;
use uom::si::time::second;

const KINDS: [MomentKind; 4] =
    [MomentKind::OutOfMedium, MomentKind::AtBore, MomentKind::FirstClears, MomentKind::NoLongerClears];

fn history(hold_s: f64, end_s: f64, fit_um: f64, half_band_um: f64, gain_um: f64) -> ClearanceHistory {
    let points = (0..=60).map(|i| {
        let time = -hold_s + (hold_s + end_s) * f64::from(i) / 60.0;
        let share = if time < 0.0 { (time + hold_s) / hold_s } else { 1.0 - time / end_s };
        let um = |offset: f64| Length::new::<micrometer>(fit_um + offset + gain_um * share);
        let clearance = Cases { tightest: um(-half_band_um), middle: um(0.0), loosest: um(half_band_um) };
        ClearancePoint { time: Time::new::<second>(time), clearance }
    });
    ClearanceHistory {
        points: points.collect(),
        placing_clearance: Length::new::<micrometer>(10.0),
        moments: vec![],
        in_seat: InSeat::default(),
    }
}

fn with_moments(mut history: ClearanceHistory, shares: &[f64]) -> ClearanceHistory {
    let (first, last) = (history.points[0], history.points[history.points.len() - 1]);
    history.moments = shares
        .iter()
        .enumerate()
        .map(|(i, share)| Moment {
            time: first.time + (last.time - first.time) * *share,
            kind: KINDS[i % KINDS.len()],
            clearance: history.points[((history.points.len() - 1) as f64 * share) as usize].clearance.middle,
        })
        .collect();
    history
}

fn drawn(history: &ClearanceHistory, title: &str, system: System) -> Result<Scene, PlotError> {
    let request = PlotRequest { history, title, subtitle: "62 mm N7, bearing at −18 °C", system };
    compose(&request, &Fonts::load()?)
}

fn check_words(scene: &Scene) -> Result<(), TestCaseError> {
    let page = Area { left: 0.0, top: 0.0, right: scene.width, bottom: scene.height };
    let texts: Vec<_> = scene.texts().collect();
    for (i, a) in texts.iter().enumerate() {
        prop_assert!(page.contains(&a.area()), "{:?} leaves the page", a);
        prop_assert!(a.size >= LABEL_SIZE, "{:?} is too small to read", a);
        for b in &texts[..i] {
            prop_assert!(!a.area().overlaps(&b.area()), "{:?} covers {:?}", a, b);
        }
    }
    Ok(())
}

fn check_shapes(scene: &Scene) -> Result<(), TestCaseError> {
    let points = scene.shapes.iter().flat_map(|shape| match shape {
        Shape::Fill { outline: points, .. } | Shape::Line { points, .. } => points.as_slice(),
        Shape::Text(_) => &[],
    });
    for point in points {
        let inside = (0.0..=WIDTH).contains(&point.x) && (0.0..=scene.height).contains(&point.y);
        prop_assert!(inside, "{:?} leaves the page", point);
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn words_stay_apart_and_everything_stays_on_the_page(
        hold_s in prop_oneof![Just(0.0), 1.0..200.0_f64, 200.0..40_000.0_f64],
        end_s in prop_oneof![1.0..100.0_f64, 100.0..20_000.0_f64],
        fit_um in -200.0..200.0_f64,
        half_band_um in 0.0..60.0_f64,
        gain_um in -50.0..400.0_f64,
        shares in prop::collection::vec(0.0..=1.0_f64, 0..=8),
        words in 0..50_usize,
        metric: bool,
    ) {
        let history = with_moments(history(hold_s, end_s, fit_um, half_band_um, gain_um), &shares);
        let system = if metric { System::Metric } else { System::Inch };
        let scene = drawn(&history, &"verdict ".repeat(words), system).map_err(|e| TestCaseError::fail(e.to_string()))?;
        check_words(&scene)?;
        check_shapes(&scene)?;
    }
}

/// The margins of the axis are 8 % of its span: 100 / 1.08 puts a number at the very top, and its negative one at the
/// very foot, where the name of the axis and the numbers of the time axis are near.
#[test]
fn numbers_at_the_ends_of_the_axis_keep_clear_of_other_words() {
    let extreme = 100.0 / 1.08;
    for sign in [1.0, -1.0] {
        let mut history = history(0.0, 60.0, 0.0, 0.0, sign * extreme);
        history.placing_clearance = Length::new::<micrometer>(0.0);
        let scene = drawn(&history, "Drops in", System::Metric).unwrap();
        assert!(scene.texts().any(|text| text.text.ends_with("100")));
        check_words(&scene).unwrap();
    }
}

#[test]
fn the_placing_clearance_and_the_line_of_contact_are_named() {
    let history = with_moments(history(1800.0, 60.0, -14.0, 18.0, 28.0), &[0.2, 0.97, 0.98, 0.99]);
    for (system, value) in [(System::Metric, "10 µm"), (System::Inch, "0.39 thou")] {
        let scene = drawn(&history, "Drops in", system).unwrap();
        let words: Vec<&str> = scene.texts().map(|text| text.text.as_str()).collect();
        assert!(words.iter().any(|word| word.starts_with("placing") && word.ends_with(value)), "{words:?}");
        assert!(words.contains(&"parts touch"), "{words:?}");
    }
}

#[test]
fn minutes_in_the_medium_and_seconds_in_air_have_scales_of_their_own() {
    let words = |history: &ClearanceHistory| -> Vec<String> {
        let scene = drawn(history, "Drops in", System::Metric).unwrap();
        scene.texts().map(|text| text.text.clone()).filter(|text| text.contains(" in ")).collect()
    };
    let both = words(&history(1800.0, 60.0, 0.0, 9.0, 9.0));
    assert!(
        ["minutes in the medium", "seconds in shop air"].iter().all(|axis| both.iter().any(|w| w == axis)),
        "{both:?}"
    );
    assert!(words(&history(28_800.0, 600.0, 0.0, 9.0, 9.0)).contains(&"hours in the medium".to_owned()));
    assert!(!words(&history(0.0, 60.0, 0.0, 9.0, 9.0)).iter().any(|word| word.contains("medium")));
}
