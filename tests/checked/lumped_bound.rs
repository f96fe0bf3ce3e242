//! The error that the lumped model states for itself, beside exact solutions of conduction.

use super::networks::mm;
use super::reference_rows::{Row, given, number, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::thermal::*;
use uom::si::length::millimeter;

pub const SETS: &[Set] = &[Set {
    family: "Heat",
    title: "Stated error of the lumped model",
    allowed: "what the model states for the shape, the Biot number and the share of the way, early and late each by itself; and \
              1e-6 of the time for the rounding of the rows. The first tenth of the way is left out: the surface rules there",
    checks: stated,
}];

/// Rows and files round the times to ten digits, and small errors are differences of these.
pub const ROUNDING: f64 = 1e-6;

/// One exact solution: the mean temperature θ is reached at the Fourier number `fourier` (of the row's length).
pub struct Exact {
    /// The row, by its file and what it is of.
    name: String,
    pub shape: ErrorShape,
    /// Biot number of the row's length, and of the path's.
    pub biot: f64,
    pub path: ConductionPath,
    pub volume_over_area: f64,
    pub left: f64,
    pub fourier: f64,
    pub class: String,
}

/// The row's length is 10 mm, so a wall 10 mm thick has a path of 10 mm (one face) or 5 mm (both).
fn ring(bore_share: f64, (outside, inside): (bool, bool)) -> (ErrorShape, ConductionPath, f64) {
    let large = 1.0 / (1.0 - bore_share);
    let small = large - 1.0;
    let area = f64::from(u8::from(outside)) * large + f64::from(u8::from(inside)) * small;
    let over = (large * large - small * small) / 2.0 / area * 0.01;
    match (outside, inside) {
        (true, true) => (ErrorShape::RingBothFaces { bore_share }, ConductionPath::both_faces(mm(10.0)), over),
        (true, false) => (ErrorShape::RingOutside { bore_share }, ConductionPath::one_face(mm(10.0)), over),
        _ => (ErrorShape::RingBore { bore_share }, ConductionPath::one_face(mm(10.0)), over),
    }
}

fn shape_of(row: &Row, text: &str) -> (ErrorShape, ConductionPath, f64, String) {
    let key = |name: &str| given(text, name);
    let (shape, path, over) = match row["geometry"].as_str() {
        "plane_wall" => (ErrorShape::Wall, ConductionPath::both_faces(mm(20.0)), 0.01),
        "infinite_cylinder" => (ErrorShape::Cylinder, ConductionPath::cylinder(mm(20.0)), 0.005),
        "hollow_cylinder" => {
            let outside = text.contains("outer only") || text.contains("both") || !text.contains("Bi_o=0;");
            let inside = text.contains("both") || (text.contains("Bi_i=") && !text.contains("Bi_i=0 "));
            let share = text.split("ri/ro=").nth(1).unwrap();
            ring(share.split([',', ';']).next().unwrap().parse().unwrap(), (outside, inside))
        }
        "short_cylinder" => {
            let half: f64 = text.split("H/R=").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
            let plug = Plug { outside: mm(20.0), length: mm(20.0 * half) };
            let made = plug.shape().unwrap();
            (ErrorShape::of_plug(&plug).unwrap(), made.path, (made.volume / made.area).value)
        }
        _ => {
            let large = 10.0 / (1.0 - key("ri/ro"));
            let ring =
                Ring { bore: mm(2.0 * (large - 10.0)), outside: mm(2.0 * large), width: mm(key("width/ro") * large) };
            let made = ring.shape().unwrap();
            (ErrorShape::of_ring(&ring).unwrap(), made.path, (made.volume / made.area).value)
        }
    };
    (shape, path, over, format!("{shape:.2?}"))
}

pub fn exact_rows() -> Vec<Exact> {
    let mut all = Vec::new();
    for row in read("bodies/lumped_error.csv") {
        let (shape, path, over, class) = shape_of(&row, &row["note"]);
        let (biot, left) = (number(&row, "Bi"), number(&row, "theta_mean_target"));
        // The file gives volume over area as a second Biot number.
        assert!((over / 0.01 * biot / number(&row, "Bi_c=h(V/A)/k") - 1.0).abs() < 1e-4, "{row:?}");
        let name = format!("{}, {}, Bi {biot}, {left} left", row["geometry"].replace('_', " "), row["note"]);
        all.push(Exact {
            name,
            shape,
            biot,
            path,
            volume_over_area: over,
            left,
            fourier: number(&row, "Fo_exact_for_mean"),
            class,
        });
    }
    for row in read("bodies/transient_mean.csv") {
        let text = &row["parameters"];
        let (shape, path, over, class) = shape_of(&row, text);
        let numbers = text.split("Bi").skip(1).filter_map(|part| {
            let digits = part
                .trim_start_matches(|c: char| c != '=')
                .trim_start_matches("=hR/k")
                .trim_start_matches("=h(ro-ri)/k");
            digits.trim_start_matches('=').split([' ', ';', '(']).next()?.parse::<f64>().ok()
        });
        let biot = numbers.fold(0.0, f64::max);
        let (left, fourier) = (number(&row, "value"), number(&row, "Fo"));
        let name = format!("{}, {}, {text}, {left:.4} left", row["id"], row["geometry"].replace('_', " "));
        all.push(Exact { name, shape, biot, path, volume_over_area: over, left, fourier, class });
    }
    // In the first tenth of the way the surface rules; the bound does not speak of it.
    all.retain(|row| row.left <= 0.9);
    all
}

impl Exact {
    pub fn path_biot(&self) -> f64 {
        self.biot * self.path.length.get::<millimeter>() / 10.0
    }

    /// Time of the lumped model over the exact time, less one: `t = m c (1 + Bi/n)/(h A) ln(1/θ)`.
    pub fn error(&self) -> f64 {
        let lumped = self.volume_over_area / 0.01 / self.biot * (1.0 + self.path_biot() / self.path.divisor);
        lumped * (1.0 / self.left).ln() / self.fourier - 1.0
    }

    pub fn bound(&self) -> TimeError {
        time_error(self.shape, self.path_biot(), 1.0 - self.left).unwrap()
    }
}

fn stated() -> Vec<Check> {
    let mut sheet = Sheet::of("bodies/lumped_error.csv");
    let mean = Sheet::of("bodies/transient_mean.csv");
    let rows = exact_rows();
    for row in &rows {
        let bound = row.bound();
        sheet.row(row.name.clone());
        if row.name.starts_with("TE") {
            sheet.source_of(&mean);
        }
        let computed = row.fourier * (1.0 + row.error());
        let allowed = [bound.early, bound.late].map(|share| (share + ROUNDING) * row.fourier);
        sheet.between(("Fourier number", ""), [row.fourier, computed], allowed);
    }
    sheet.done()
}
