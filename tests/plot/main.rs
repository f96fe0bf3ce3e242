//! Clearance against time as SVG and PNG.
#![cfg(feature = "cli")]
// Helpers of tests may unwrap as the tests do.
#![allow(clippy::unwrap_used)]

mod histories;

use histories::{all, s, um};
use seatwise::plan::clearance_history::{ClearanceHistory, ClearancePoint, InSeat, Moment, MomentKind};
use seatwise::quantity::{Cases, Length, System, Time};
use seatwise::report::plot::palette::{self, Colour};
use seatwise::report::plot::{PlotError, PlotRequest, png, svg};
use std::io::Cursor;

fn request(history: &ClearanceHistory) -> PlotRequest<'_> {
    PlotRequest { history, title: "Press", subtitle: "62 mm N7", system: System::Metric }
}

/// Points of the middle case, 10 µm either side for the others.
fn points(course: &[(f64, f64)]) -> ClearanceHistory {
    let point = |&(time, middle): &(f64, f64)| ClearancePoint {
        time: s(time),
        clearance: Cases { tightest: um(middle - 10.0), middle: um(middle), loosest: um(middle + 10.0) },
    };
    ClearanceHistory {
        points: course.iter().map(point).collect(),
        placing_clearance: um(10.0),
        moments: vec![],
        in_seat: InSeat::default(),
    }
}

fn decoded(file: &[u8]) -> (u32, u32, Vec<u8>) {
    let mut reader = ::png::Decoder::new(Cursor::new(file)).read_info().unwrap();
    let mut pixels = vec![0; reader.output_buffer_size().unwrap()];
    let info = reader.next_frame(&mut pixels).unwrap();
    (info.width, info.height, pixels)
}

fn count(pixels: &[u8], colour: Colour) -> usize {
    pixels.chunks(3).filter(|px| *px == [colour.red, colour.green, colour.blue]).count()
}

/// Opening and closing tags pair up; the style sheet is the only place with other braces.
fn assert_well_formed(document: &str) {
    let mut open = Vec::new();
    for piece in document.split('<').skip(1) {
        let tag = piece.split_once('>').expect("a tag that is never closed").0;
        if let Some(name) = tag.strip_prefix('/') {
            assert_eq!(open.pop(), Some(name.to_owned()));
        } else if !tag.ends_with('/') {
            open.push(tag.split(' ').next().unwrap_or_default().to_owned());
        }
    }
    assert!(open.is_empty(), "{open:?} are never closed");
    assert!(!document.contains("NaN") && !document.contains("inf "), "a number is not finite");
}

#[test]
fn every_example_gives_an_svg_with_its_title_labels_and_units() {
    for example in all() {
        let document = svg(&example.request()).unwrap();
        assert_well_formed(&document);
        let unit = if example.system == System::Metric { "clearance, µm" } else { "clearance, thou" };
        let title = format!("<title>{}</title>", example.title);
        for wanted in [title.as_str(), unit, "tightest", "middle", "loosest", "clear", "interference", "parts touch"] {
            assert!(document.contains(wanted), "{}: no {wanted}", example.name);
        }
        assert!(document.contains("at the bore, "), "{}", example.name);
        assert!(document.contains("font-family=\"Seatwise Sans, sans-serif\""), "a generic font to fall back on");
        assert_eq!(document.matches("@font-face").count(), 2);
    }
}

#[test]
fn every_example_gives_a_png_of_twice_the_size_with_its_colours_in_it() {
    for example in all() {
        let (width, height, pixels) = decoded(&png(&example.request()).unwrap());
        assert_eq!(width, 1920, "{}", example.name);
        assert!(height >= 1280, "{}", example.name);
        for colour in [palette::INK, palette::MIDDLE, palette::TIGHTEST, palette::LOOSEST, palette::BAND] {
            assert!(count(&pixels, colour) > 300, "{}: {colour:?} is missing", example.name);
        }
    }
}

#[test]
fn the_same_request_gives_the_same_bytes() {
    let example = &all()[0];
    assert_eq!(svg(&example.request()), svg(&example.request()));
    assert_eq!(png(&example.request()), png(&example.request()));
}

#[test]
fn signs_of_xml_in_a_title_are_text() {
    let history = points(&[(0.0, 5.0), (60.0, 5.0)]);
    let title = "6 < 7 & \"8\" > 5\u{1}";
    let document = svg(&PlotRequest { title, ..request(&history) }).unwrap();
    assert_well_formed(&document);
    assert!(document.contains("<title>6 &lt; 7 &amp; \"8\" &gt; 5 </title>"));
    assert!(!document.contains('\u{1}'));
}

#[test]
fn degenerate_histories_are_drawn() {
    let courses: [(&str, &[(f64, f64)]); 9] = [
        ("a single point", &[(0.0, 5.0)]),
        ("a single point in the medium", &[(-60.0, 5.0)]),
        ("a single point in air", &[(7.0, 0.0)]),
        ("flat and on the line of contact", &[(-60.0, 0.0), (0.0, 0.0), (30.0, 0.0)]),
        ("all interference", &[(-60.0, -400.0), (0.0, -300.0), (30.0, -350.0)]),
        ("all clear", &[(-60.0, 400.0), (0.0, 500.0), (30.0, 450.0)]),
        ("only in the medium", &[(-7200.0, -10.0), (0.0, 20.0)]),
        ("no point at zero", &[(-100.0, -10.0), (50.0, 20.0)]),
        ("a step", &[(-100.0, -10.0), (0.0, -10.0), (0.0, 20.0), (1.0, 20.0)]),
    ];
    for (name, course) in courses {
        let history = points(course);
        assert_well_formed(&svg(&request(&history)).unwrap());
        let (_, _, pixels) = decoded(&png(&request(&history)).unwrap());
        assert!(count(&pixels, palette::MIDDLE) > 100, "{name}: no curve");
    }
}

#[test]
fn curves_that_coincide_are_drawn_and_named() {
    let mut history = points(&[(0.0, 5.0), (60.0, 5.0)]);
    for point in &mut history.points {
        point.clearance = Cases { tightest: um(5.0), middle: um(5.0), loosest: um(5.0) };
    }
    let document = svg(&request(&history)).unwrap();
    assert!(["tightest", "middle", "loosest"].iter().all(|case| document.contains(case)));
}

#[test]
fn the_curve_is_cut_at_time_zero_in_proportion() {
    let two = points(&[(-100.0, -10.0), (50.0, 20.0)]);
    let three = points(&[(-100.0, -10.0), (0.0, 10.0), (50.0, 20.0)]);
    let body = |history: &ClearanceHistory| {
        let document = svg(&request(history)).unwrap();
        document.split_once("</style>").unwrap().1.to_owned()
    };
    assert_eq!(body(&two), body(&three));
}

fn errors_of(history: &ClearanceHistory) -> PlotError {
    let error = svg(&request(history)).unwrap_err();
    assert_eq!(png(&request(history)).unwrap_err().to_string(), error.to_string());
    error
}

/// Puts a bad number into a sound history.
type Spoil = Box<dyn Fn(&mut ClearanceHistory)>;

#[test]
fn numbers_that_are_not_finite_are_refused_by_name() {
    let sound = points(&[(-60.0, 5.0), (0.0, 5.0), (60.0, 5.0)]);
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300] {
        let (time, length): (Time, Length) = (s(bad), um(bad));
        let moment = Moment { time: s(0.0), kind: MomentKind::AtBore, clearance: um(0.0) };
        let spoilt: [(&str, Spoil); 6] = [
            ("the time of point 2", Box::new(move |h| h.points[1].time = time)),
            ("the tightest clearance of point 2", Box::new(move |h| h.points[1].clearance.tightest = length)),
            ("the loosest clearance of point 3", Box::new(move |h| h.points[2].clearance.loosest = length)),
            ("the placing clearance", Box::new(move |h| h.placing_clearance = length)),
            ("the time of moment 1", Box::new(move |h| h.moments = vec![Moment { time, ..moment }])),
            ("the clearance of moment 1", Box::new(move |h| h.moments = vec![Moment { clearance: length, ..moment }])),
        ];
        for (what, spoil) in spoilt {
            let mut history = sound.clone();
            spoil(&mut history);
            let said = errors_of(&history).to_string();
            assert!(said.starts_with(what), "{said}");
        }
    }
}

#[test]
fn histories_that_make_no_sense_are_refused() {
    assert_eq!(errors_of(&points(&[])), PlotError::NoPoints);
    assert_eq!(errors_of(&points(&[(0.0, 1.0), (5.0, 1.0), (4.0, 1.0)])), PlotError::Disordered { point: 3 });
    let moment = |time| Moment { time: s(time), kind: MomentKind::AtBore, clearance: um(0.0) };
    let mut late = points(&[(0.0, 1.0), (5.0, 1.0)]);
    late.moments = vec![moment(5.5)];
    assert!(matches!(errors_of(&late), PlotError::MomentOutside { .. }));
    let mut many = points(&[(0.0, 1.0), (5.0, 1.0)]);
    many.moments = vec![moment(1.0); 9];
    assert_eq!(errors_of(&many), PlotError::TooManyMoments { count: 9, most: 8 });
}

#[test]
fn a_title_that_would_fill_the_page_is_refused_with_the_lines_that_fit() {
    let history = points(&[(0.0, 5.0), (60.0, 5.0)]);
    let title = "word ".repeat(400);
    let said = svg(&PlotRequest { title: &title, ..request(&history) }).unwrap_err().to_string();
    assert!(said.contains("room for 12"), "{said}");
}

#[test]
fn text_and_lines_have_the_contrast_of_wcag_against_paper() {
    for text in [palette::INK, palette::MUTED, palette::MIDDLE, palette::TIGHTEST, palette::LOOSEST] {
        assert!(text.contrast(palette::PAPER) >= 4.5, "{text:?}: {}", text.contrast(palette::PAPER));
    }
    // Words and lines also lie on the band.
    for text in [palette::INK, palette::MUTED, palette::MIDDLE] {
        assert!(text.contrast(palette::BAND) >= 4.5, "{text:?}: {}", text.contrast(palette::BAND));
    }
    for line in [palette::TIGHTEST, palette::LOOSEST, palette::HAIRLINE] {
        assert!(line.contrast(palette::BAND) >= 3.0, "{line:?}: {}", line.contrast(palette::BAND));
    }
}

#[test]
fn the_three_cases_keep_apart_in_greyscale() {
    let cases = [palette::MIDDLE, palette::TIGHTEST, palette::LOOSEST, palette::BAND].map(Colour::lightness);
    for (i, a) in cases.iter().enumerate() {
        for b in &cases[..i] {
            assert!((a - b).abs() >= 10.0, "{a} and {b} look alike in print");
        }
    }
}

/// Tension and compression of one size are alike in grey and apart in hue for the common kinds of colour blindness: one side
/// has more red than blue, the other more blue than red.
#[test]
fn a_band_with_a_sign_is_as_dark_as_its_size_on_either_side() {
    let mut before = 101.0;
    for share in [0.1, 0.3, 0.5, 0.7, 0.9, 1.0] {
        let (above, below) = (palette::band_with_sign(share), palette::band_with_sign(-share));
        assert!((above.lightness() - below.lightness()).abs() < 2.0, "{share}: {above:?} {below:?}");
        assert!(above.lightness() < before - 3.0, "{share}");
        before = above.lightness();
        if share > 0.2 {
            let cold = |colour: Colour| f64::from(colour.blue) - f64::from(colour.red);
            assert!(cold(above) < -20.0 && cold(below) > 20.0, "{share}: {above:?} {below:?}");
        }
    }
}

/// Known values: black on white 21 : 1, and #777777 on white 4.48 : 1, just short of 4.5 (worked by hand from the
/// WCAG formula: 0x77/255 = 0.4667, linear 0.1845, 1.05 / 0.2345 = 4.478). L* of that grey: 116 * 0.5693 - 16 = 50.03.
#[test]
fn contrast_and_lightness_follow_their_formulas() {
    let grey = |level| Colour { red: level, green: level, blue: level };
    assert!((grey(0).contrast(palette::PAPER) - 21.0).abs() < 1e-9);
    assert!((grey(0x77).contrast(palette::PAPER) - 4.478).abs() < 0.0005);
    assert!((grey(0x77).lightness() - 50.03).abs() < 0.005);
    // The channels weigh differently: green is the lightest of the three, blue the darkest.
    let green = Colour { red: 0, green: 255, blue: 0 };
    let blue = Colour { red: 0, green: 0, blue: 255 };
    assert!((green.luminance() - 0.7152).abs() < 1e-9 && (blue.luminance() - 0.0722).abs() < 1e-9);
}
