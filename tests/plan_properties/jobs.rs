//! Random sound jobs, written out in millimetres or in inches with the same numbers to the last nanometre.

use proptest::prelude::*;
use std::fmt::Write;

/// The unit of the sizes, and the scale of the temperatures, in a job's text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Written {
    Metric,
    Inch,
}

impl Written {
    /// A size of so many thousandths of an inch: 25.4 µm each, so both ways of writing it are exact.
    fn size(self, thou: u32) -> String {
        match self {
            Self::Metric => format!("{:.4} mm", f64::from(thou) * 0.0254),
            Self::Inch => format!("{:.3} in", f64::from(thou) * 0.001),
        }
    }

    /// A pair of deviations in tenths of a thousandth of an inch: 2.54 µm each.
    fn limits(self, (lower, upper): (i32, i32)) -> String {
        match self {
            Self::Metric => format!("{:+.5}/{:+.5} mm", f64::from(lower) * 0.002_54, f64::from(upper) * 0.002_54),
            Self::Inch => format!("{:+.4}/{:+.4} in", f64::from(lower) * 1e-4, f64::from(upper) * 1e-4),
        }
    }

    /// A temperature in steps of 5 °C, which are whole degrees Fahrenheit.
    fn temperature(self, steps: i32) -> String {
        match self {
            Self::Metric => format!("{} °C", 5 * steps),
            Self::Inch => format!("{} °F", 9 * steps + 32),
        }
    }
}

/// What goes in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    Bearing,
    Bush,
    Plug,
}

/// Limits of one side of the joint.
#[derive(Clone, Copy, Debug)]
pub enum Band {
    Class(&'static str),
    /// Lower limit and width, in tenths of a thousandth of an inch.
    Limits(i32, i32),
}

impl Band {
    fn write(self, written: Written) -> String {
        match self {
            Self::Class(class) => class.to_owned(),
            Self::Limits(lower, width) => written.limits((lower, lower + width)),
        }
    }
}

/// Chilling of the part in a medium.
#[derive(Clone, Copy, Debug)]
pub struct Chill {
    pub medium: &'static str,
    /// Temperature in steps of 5 °C, where the medium lets it be chosen.
    pub steps: Option<i32>,
    pub minutes: u32,
    /// Film coefficient, W/m²K, when stated.
    pub film: Option<f64>,
}

/// Warming of the housing in the oven.
#[derive(Clone, Copy, Debug)]
pub struct Warm {
    pub steps: i32,
    pub minutes: u32,
}

/// A job that must pass every check.
#[derive(Clone, Debug)]
pub struct RandomJob {
    pub kind: Kind,
    pub outside_thou: u32,
    pub bore_share: f64,
    pub wall_share: f64,
    pub width_thou: u32,
    pub part_material: &'static str,
    pub inner: Band,
    pub outer: Band,
    pub housing_material: &'static str,
    pub chill: Option<Chill>,
    pub warm: Option<Warm>,
    pub shop_steps: i32,
    pub carry_s: u32,
    pub service: Option<(i32, i32)>,
}

impl RandomJob {
    pub fn text(&self, written: Written) -> String {
        let mut text = String::from("title = \"Random job\"\n");
        self.part(&mut text, written);
        let outside = (f64::from(self.outside_thou) * (1.0 + self.wall_share)).round() as u32;
        let _ = write!(
            text,
            "[housing]\nbore_limits = \"{}\"\noutside = \"{}\"\nmaterial = \"{}\"\n",
            self.outer.write(written),
            written.size(outside),
            self.housing_material
        );
        self.treatments(&mut text, written);
        let _ = write!(
            text,
            "[bench]\ntemperature = \"{}\"\ncarry = \"{} s\"\nhumidity = \"60 %\"\n",
            written.temperature(self.shop_steps),
            self.carry_s
        );
        if let Some((cold, hot)) = self.service {
            let [cold, hot] = [cold, hot].map(|steps| written.temperature(steps));
            let _ = write!(text, "[service]\ncoldest = \"{cold}\"\nhottest = \"{hot}\"\n");
        }
        text
    }

    fn part(&self, text: &mut String, written: Written) {
        let bore = (f64::from(self.outside_thou) * self.bore_share).round() as u32;
        let (kind, own) = match self.kind {
            Kind::Bearing => ("ball bearing", "closure = \"open\"\n".to_owned()),
            Kind::Bush => ("plain bush", format!("material = \"{}\"\n", self.part_material)),
            Kind::Plug => ("solid plug", format!("material = \"{}\"\n", self.part_material)),
        };
        let _ = write!(text, "[bearing]\nkind = \"{kind}\"\n{own}");
        if self.kind != Kind::Plug {
            let _ = writeln!(text, "bore = \"{}\"", written.size(bore));
        }
        let _ = write!(
            text,
            "outside = \"{}\"\nwidth = \"{}\"\noutside_limits = \"{}\"\n",
            written.size(self.outside_thou),
            written.size(self.width_thou),
            self.inner.write(written)
        );
    }

    fn treatments(&self, text: &mut String, written: Written) {
        if let Some(chill) = self.chill {
            let _ = write!(
                text,
                "[chill]\npart = \"part\"\nmedium = \"{}\"\nhold = \"{} min\"\n",
                chill.medium, chill.minutes
            );
            if let Some(steps) = chill.steps {
                let _ = writeln!(text, "temperature = \"{}\"", written.temperature(steps));
            }
            if let Some(film) = chill.film {
                let _ = writeln!(text, "film = \"{film} W/m2K\"");
            }
        }
        if let Some(warm) = self.warm {
            let (at, hold) = (written.temperature(warm.steps), warm.minutes);
            let _ = write!(
                text,
                "[warm]\npart = \"housing\"\nmedium = \"oven\"\ntemperature = \"{at}\"\nhold = \"{hold} min\"\n"
            );
        }
    }
}

/// Any chill: a freezer set between -25 and -15 °C, dry ice, or liquid nitrogen.
pub fn chill() -> impl Strategy<Value = Chill> {
    let medium = prop_oneof![
        (-5..=-3_i32).prop_map(|steps| ("domestic-freezer", Some(steps))),
        Just(("dry-ice", None)),
        Just(("liquid-nitrogen", None)),
    ];
    (medium, 1..=240_u32).prop_map(|((medium, steps), minutes)| Chill { medium, steps, minutes, film: None })
}

/// Oven of 40 to 150 °C: above 120 °C an open bearing must not follow.
pub fn warm() -> impl Strategy<Value = Warm> {
    (8..=30_i32, 1..=180_u32).prop_map(|(steps, minutes)| Warm { steps, minutes })
}

fn part() -> impl Strategy<Value = (Kind, &'static str, Band)> {
    let bands = prop_oneof![
        proptest::sample::select(vec!["h6", "k6", "n6", "p6"]).prop_map(Band::Class),
        (0..=10_i32, 0..=6_i32).prop_map(|(lower, width)| Band::Limits(lower, width)),
    ];
    let material = proptest::sample::select(vec!["carbon-steel", "bronze", "stainless-304", "aluminium-6061-t6"]);
    let plain = (prop_oneof![Just(Kind::Bush), Just(Kind::Plug)], material, bands);
    prop_oneof![Just((Kind::Bearing, "bearing-steel", Band::Class("ISO 492 Normal"))), plain]
}

/// Any sound job in a housing.
pub fn job() -> impl Strategy<Value = RandomJob> {
    let outer = prop_oneof![
        proptest::sample::select(vec!["H7", "J7", "K7", "M7", "N7"]).prop_map(Band::Class),
        (-9..=6_i32, 0..=6_i32).prop_map(|(lower, width)| Band::Limits(lower, width)),
    ];
    let housing = proptest::sample::select(vec!["cast-aluminium", "grey-iron", "carbon-steel", "die-cast-aluminium"]);
    let sizes = (1200..=6000_u32, 0.3..0.75_f64, 0.15..2.0_f64, 300..=1500_u32);
    let shop = (2..=7_i32, 0..=60_u32, proptest::option::of((-5..=3_i32, 4..=18_i32)));
    let media = (proptest::option::of(chill()), proptest::option::of(warm()));
    (part(), sizes, outer, housing, media, shop).prop_map(|(part, sizes, outer, housing_material, media, shop)| {
        let ((kind, part_material, inner), (outside_thou, bore_share, wall_share, width_thou)) = (part, sizes);
        let ((chill, warm), (shop_steps, carry_s, service)) = (media, shop);
        RandomJob {
            kind,
            outside_thou,
            bore_share,
            wall_share,
            width_thou,
            part_material,
            inner,
            outer,
            housing_material,
            chill,
            warm,
            shop_steps,
            carry_s,
            service,
        }
    })
}
