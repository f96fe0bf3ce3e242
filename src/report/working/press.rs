//! Pressure, force and stress of the tightest case at the temperature of the shop.

use super::formula::{Formula, Symbol};
use super::model::{Line, Value};
use super::seat::{INTERFERENCE, JOINT, SMOOTHED, SMOOTHING, Seat, Which, line, of, symbol, v};
use crate::plan::SeatKind;
use crate::quantity::{Length, Pressure, Worked};

const PRESSURE: Symbol = symbol("p", "");
const AT_SHOP: Symbol = symbol("U", "s");
const LENGTH: Symbol = symbol("L", "");
const FRICTION: Symbol = symbol("µ", "");

pub(super) fn lines(seat: Seat<'_>) -> Vec<Line> {
    if seat.seat.basis.at_shop.tightest <= Length::default() {
        return Vec::new();
    }
    let mut lines = vec![interference(seat)];
    lines.extend([give(seat, Which::Inner), give(seat, Which::Outer)]);
    lines.extend([pressure(seat), force(seat), hoop(seat)]);
    lines.extend(strength(seat));
    lines.extend(ring_change(seat));
    lines
}

fn at_shop(seat: Seat<'_>) -> Value {
    let amount = Worked::Small(seat.seat.basis.at_shop.tightest);
    seat.value(AT_SHOP, "interference that bears in the shop", amount, "basis/at_shop_um/tightest")
}

/// What is left of the interference of 20 °C at the temperature of the shop, and after smoothing.
fn interference(seat: Seat<'_>) -> Line {
    let mut formula = v(INTERFERENCE) + v(of("D", Which::Inner)) * v(of("ε", Which::Inner))
        - v(of("D", Which::Outer)) * v(of("ε", Which::Outer));
    let to = |which: Which| {
        let strain = seat.part(which).strain_at_shop;
        seat.strain(which, strain, "strain_at_shop_um_m", "the temperature of the shop".to_owned())
    };
    let (inner, outer) = (seat.size(Which::Inner, true), seat.size(Which::Outer, false));
    let mut put_in = vec![seat.interference(), inner, to(Which::Inner), outer, to(Which::Outer)];
    let mut sources = seat.sources_of_both("expansion");
    if let Some(roughness) = seat.roughness() {
        formula = formula - v(SMOOTHING) * (v(of("R", Which::Inner)) + v(of("R", Which::Outer)));
        put_in.extend(roughness);
        sources.push(SMOOTHED.to_owned());
    }
    line("Interference that bears in the shop", at_shop(seat), formula, put_in, sources)
}

/// How far a ring gives way: the term in brackets of Lamé's formula.
fn give(seat: Seat<'_>, which: Which) -> Line {
    let (joint, poisson) = (v(JOINT), of("ν", which));
    let ratio = |small: Formula, large: Formula| {
        (large.clone().squared() + small.clone().squared()) / (large.squared() - small.squared())
    };
    let other = symbol("d", which.mark());
    let part = seat.part(which);
    let key = if which == Which::Inner { "inside_mm" } else { "outside_mm" };
    let size = if which == Which::Inner { part.inside } else { Some(part.outside) };
    let (formula, other) = match (which, size) {
        (Which::Inner, None) => (Formula::Whole(1) - v(poisson), None),
        (Which::Inner, Some(size)) => (ratio(v(other), joint) - v(poisson), Some(size)),
        (Which::Outer, size) => (ratio(joint, v(other)) + v(poisson), size),
    };
    let mut put_in = Vec::new();
    if let Some(size) = other {
        let meaning = if which == Which::Inner { "inside of the ring" } else { "outside of the ring" };
        let meaning = format!("{meaning} that stands for the {}", seat.name(which));
        let at = format!("{}/{key}", seat.basis(which));
        let value = seat.value(symbol("d", which.mark()), meaning, Worked::RoughSize(size), &at);
        put_in = vec![seat.joint(), value];
    }
    let meaning = format!("Poisson ratio of {}", seat.material(which));
    let at = format!("{}/poisson", seat.basis(which));
    put_in.push(seat.value(poisson, meaning, Worked::Number(part.poisson), &at));
    let what = format!("How far the {} gives way", seat.name(which));
    let of_material = seat.source(&format!("{}, poisson ratio", seat.material(which)));
    line(what, given(seat, which), formula, put_in, vec![seat.source("pressure and stress"), of_material])
}

fn given(seat: Seat<'_>, which: Which) -> Value {
    let meaning = format!("how far the {} gives way", seat.name(which));
    let amount = Worked::Number(seat.part(which).give);
    seat.value(of("K", which), meaning, amount, &format!("{}/give", seat.basis(which)))
}

fn modulus(seat: Seat<'_>, which: Which) -> Value {
    let meaning = format!("elastic modulus of {}", seat.material(which));
    let amount = Worked::Modulus(seat.part(which).elastic_modulus);
    seat.value(of("E", which), meaning, amount, &format!("{}/elastic_modulus_mpa", seat.basis(which)))
}

/// `D · (K_i/E_i + K_o/E_o)`: interference for each pressure.
pub(super) fn compliance() -> Formula {
    let give = |which: Which| v(of("K", which)) / v(of("E", which));
    v(JOINT) * (give(Which::Inner) + give(Which::Outer))
}

/// The values of [`compliance`].
pub(super) fn compliance_values(seat: Seat<'_>) -> Vec<Value> {
    let [inner, outer] = [Which::Inner, Which::Outer].map(|which| [given(seat, which), modulus(seat, which)]);
    [seat.joint()].into_iter().chain(inner).chain(outer).collect()
}

/// A factor of the seat's shape; none where it is one.
pub(super) fn shape(seat: Seat<'_>, of: &'static str, factor: f64, end: &str) -> Option<Value> {
    let exact = (factor - 1.0).abs() < f64::EPSILON;
    let symbol = symbol("f", of);
    let what = match of {
        "p" => "pressure",
        "F" => "force",
        _ => "closing",
    };
    let meaning = format!("factor of the {what} for the shape of the seat, {end} end");
    (!exact).then(|| seat.value(symbol, meaning, Worked::Number(factor), &format!("press/shape/{what}_{end}")))
}

/// A formula times a factor that may be one.
pub(super) fn times(factor: Option<&Value>, formula: Formula) -> Formula {
    match factor {
        None => formula,
        Some(factor) => v(factor.symbol) * formula,
    }
}

fn press_pressure(seat: Seat<'_>) -> Value {
    let amount = Worked::Pressure(seat.seat.press.pressure.tightest);
    seat.value(PRESSURE, "pressure in the joint", amount, "press/pressure_mpa/tightest")
}

fn pressure(seat: Seat<'_>) -> Line {
    if let Some((flow, ratio)) = seat.seat.press.flow_high {
        return yielded_pressure(seat, flow, ratio);
    }
    let factor = shape(seat, "p", seat.seat.press.shape.pressure.1, "high");
    let formula = times(factor.as_ref(), v(AT_SHOP) / compliance());
    let put_in = factor.into_iter().chain([at_shop(seat)]).chain(compliance_values(seat)).collect();
    let mut sources = vec![seat.source("pressure and stress"), seat.source("shape of the seat")];
    sources.extend(seat.sources_of_both("elastic modulus"));
    line("Pressure in the joint", press_pressure(seat), formula, put_in, sources)
}

/// `σ_f (1 - 1/(2 ζ) - ζ d²/(2 D²))`: what a bush that has yielded bears.
fn yielded_pressure(seat: Seat<'_>, flow: Pressure, ratio: f64) -> Line {
    let (stress, zone, bore) = (symbol("σ", "f"), symbol("ζ", ""), of("d", Which::Inner));
    let twice = |formula: Formula| Formula::Whole(2) * formula;
    let in_zone = Formula::Whole(1) / twice(v(zone));
    let beyond = v(zone) * v(bore).squared() / twice(v(JOINT).squared());
    let formula = v(stress) * (Formula::Whole(1) - in_zone - beyond);
    let mut put_in = vec![
        seat.value(stress, "hoop stress at which it flows", Worked::Pressure(flow), "press/flow_high_mpa"),
        seat.value(
            zone,
            "outside of the plastic zone over the bore",
            Worked::Number(ratio),
            "press/plastic_ratio_high",
        ),
        seat.joint(),
    ];
    if let Some(inside) = seat.part(Which::Inner).inside {
        let meaning = format!("inside of the {}", seat.name(Which::Inner));
        put_in.push(seat.value(
            bore,
            meaning,
            Worked::RoughSize(inside),
            &format!("{}/inside_mm", seat.basis(Which::Inner)),
        ));
    }
    line("Pressure in the joint", press_pressure(seat), formula, put_in, vec![seat.source("yielding")])
        .with_remark("It has yielded: with the most that von Mises gives")
}

/// `µ · π · D · L`.
pub(super) fn rubbing() -> Formula {
    v(FRICTION) * Formula::Pi * v(JOINT) * v(LENGTH)
}

/// The values of [`rubbing`] without the diameter.
pub(super) fn rubbing_values(seat: Seat<'_>, high: bool) -> [Value; 2] {
    let (low_friction, high_friction) = seat.plan.job.press.friction;
    let (friction, end) = if high { (high_friction, "high") } else { (low_friction, "low") };
    let length = Worked::RoughSize(seat.seat.press.length);
    [
        seat.value(
            FRICTION,
            format!("friction, {end} end"),
            Worked::Number(friction),
            &format!("press/friction_{end}"),
        ),
        seat.value(LENGTH, "length of the joint", length, "press/length_mm"),
    ]
}

fn force(seat: Seat<'_>) -> Line {
    let shaped = &seat.seat.press.shape;
    let same = (shaped.force.1 - shaped.pressure.1).abs() < f64::EPSILON;
    let mut formula = rubbing() * v(PRESSURE);
    let [friction, length] = rubbing_values(seat, true);
    let mut put_in = vec![friction, seat.joint(), length, press_pressure(seat)];
    if !same {
        // The pressure carries its own factor, which the force has not.
        let one = |of, factor, what: &str| {
            let meaning = format!("factor of the {what} for the shape of the seat, high end");
            seat.value(symbol("f", of), meaning, Worked::Number(factor), &format!("press/shape/{what}_high"))
        };
        let factors = [one("F", shaped.force.1, "force"), one("p", shaped.pressure.1, "pressure")];
        formula = formula * (v(factors[0].symbol) / v(factors[1].symbol));
        put_in.extend(factors);
    }
    let amount = Worked::Force(seat.seat.press.force.tightest);
    let result = seat.value(symbol("F", ""), "force to press home", amount, "press/force_n/tightest");
    let source = vec![seat.source("press force"), seat.source("friction")];
    line("Force to press it home, full depth", result, formula, put_in, source)
}

fn hoop(seat: Seat<'_>) -> Line {
    let outside = of("d", Which::Outer);
    let (small, large) = (v(JOINT).squared(), v(outside).squared());
    let formula = v(PRESSURE) * ((large.clone() + small.clone()) / (large - small));
    let part = Worked::RoughSize(seat.part(Which::Outer).outside);
    let meaning = format!("outside of the ring that stands for the {}", seat.name(Which::Outer));
    let outside = seat.value(outside, meaning, part, "basis/outer/outside_mm");
    let amount = Worked::Pressure(seat.seat.press.hoop_outer.tightest);
    let result = seat.value(symbol("σ", ""), "hoop stress", amount, "press/hoop_outer_mpa/tightest");
    let what = format!("Hoop stress at the {}", seat.name(Which::Outer));
    line(
        what,
        result,
        formula,
        vec![press_pressure(seat), outside, seat.joint()],
        vec![seat.source("pressure and stress")],
    )
}

fn strength(seat: Seat<'_>) -> Option<Line> {
    let factor = Worked::Number(seat.seat.press.yield_factor.tightest?);
    let limit = symbol("U", "y");
    let most = Worked::Small(seat.seat.press.elastic_limit);
    let most = seat.value(limit, "interference at which it reaches its strength", most, "press/elastic_limit_um");
    let result = seat.value(symbol("S", ""), "strength over stress", factor, "press/yield_factor/tightest");
    let formula = v(limit) / v(AT_SHOP);
    let what = format!("Strength over stress, {}", seat.seat.press.weaker);
    let remark = match seat.seat.press.takes_set {
        Some(_) => "Below one: it takes a set and goes on holding",
        None if factor.si() < 1.0 => "Below one: it yields or cracks, and pressure and force are not those worked here",
        None => "",
    };
    let sources = vec![seat.source("yielding")];
    Some(line(what, result, formula, vec![most, at_shop(seat)], sources).with_remark(remark))
}

/// How far the ring of the part closes in its housing, or grows on its shaft.
///
/// A bush that has yielded closes further, and a ring on a shaft that has yielded grows less: that is no product of the pressure.
fn ring_change(seat: Seat<'_>) -> Option<Line> {
    if !seat.seat.press.changes_elastically {
        return None;
    }
    let change = Worked::Small(seat.seat.press.ring_change?.tightest);
    let (which, what) = match seat.seat.seat {
        SeatKind::Housing => (Which::Inner, "How far the inside of the ring closes"),
        SeatKind::Shaft => (Which::Outer, "How far the outside of the ring grows"),
    };
    let (other, modulus) = (of("d", which), modulus(seat, which));
    let part = seat.part(which);
    let (size, key, walls) = match which {
        Which::Inner => (part.inside?, "inside_mm", v(JOINT).squared() - v(other).squared()),
        Which::Outer => (part.outside, "outside_mm", v(other).squared() - v(JOINT).squared()),
    };
    // 2 p D² d / (E (D² - d²)), and the plane pressure is that of the joint without its factor.
    let formula = Formula::Whole(2) * v(PRESSURE) * v(JOINT).squared() * v(other) / (v(modulus.symbol) * walls);
    let shaped = &seat.seat.press.shape;
    let factors =
        [("c", shaped.closing.1, "closing"), ("p", shaped.pressure.1, "pressure")].map(|(of, factor, what)| {
            let meaning = format!("factor of the {what} for the shape of the seat, high end");
            seat.value(symbol("f", of), meaning, Worked::Number(factor), &format!("press/shape/{what}_high"))
        });
    let same = (shaped.closing.1 - shaped.pressure.1).abs() < f64::EPSILON;
    let value = seat.value(
        other,
        "the other diameter of that ring",
        Worked::RoughSize(size),
        &format!("{}/{key}", seat.basis(which)),
    );
    let mut put_in = vec![press_pressure(seat), seat.joint(), value, modulus];
    let formula = if same {
        formula
    } else {
        let ratio = v(factors[0].symbol) / v(factors[1].symbol);
        put_in.extend(factors);
        formula * ratio
    };
    let result = seat.value(symbol("Δd", which.mark()), "change of the ring", change, "press/ring_change_um/tightest");
    let of_material = seat.source(&format!("{}, elastic modulus", seat.material(which)));
    Some(line(what, result, formula, put_in, vec![seat.source("pressure and stress"), of_material]))
}
