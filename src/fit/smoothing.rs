use super::FitError;
use crate::quantity::Length;
use uom::si::length::micrometer;

/// Default share of the summed peak heights that pressing together flattens.
///
/// DIN 7190, from memory: 0.8 or 0.4 by edition; recollections disagree and no text was opened, so the factor is an
/// input and this default is doubtful. The larger figure leaves less interference to hold the joint.
pub const SMOOTHING_FACTOR: f64 = 0.8;

/// Rz taken for each unit of Ra where only Ra is known.
///
/// Common practice, no published source: turned, bored and ground surfaces lie between about 4 and 6.3, fine ones higher
/// than rough ones. 6 lies near the upper end, which leaves less interference to hold the joint.
pub const RZ_PER_RA: f64 = 6.0;

/// Peak-to-valley height Rz assumed for an arithmetic mean roughness Ra.
///
/// Rz = [`RZ_PER_RA`] · Ra. An assumption: report it as one.
pub fn rz_from_ra(ra: Length) -> Length {
    ra * RZ_PER_RA
}

/// The interference that is left when the rough peaks of both surfaces are flattened.
///
/// U_w = U - factor · (Rz_inner + Rz_outer), and 0 where that would turn interference into clearance: flattened peaks
/// carry no pressure, they do not open a gap. A clearance (negative interference) is returned as it is.
///
/// **Arguments**: `interference` on diameter, positive when tight; `rz_inner`, `rz_outer`, the heights Rz of the two
/// surfaces; `factor`, the share that is flattened, [`SMOOTHING_FACTOR`] where nothing better is known.
///
/// **Valid for** joints pressed together. A shrunk joint flattens less; the same factor is then on the safe side for
/// holding and on the unsafe side for stress.
///
/// # Errors
/// [`FitError::Smoothing`] when a roughness is negative or not finite, the interference is not finite, or the factor
/// lies outside 0 to 1.
///
/// **Source**: form of DIN 7190-1, from memory.
pub fn effective_interference(
    interference: Length,
    rz_inner: Length,
    rz_outer: Length,
    factor: f64,
) -> Result<Length, FitError> {
    let um = |size: Length| format!("{} µm", size.get::<micrometer>());
    for (what, size) in [("the roughness of the inner part", rz_inner), ("the roughness of the outer part", rz_outer)] {
        if !(size.is_finite() && size >= Length::default()) {
            return Err(FitError::Smoothing { what, given: um(size), allowed: "zero or more" });
        }
    }
    if !(0.0..=1.0).contains(&factor) {
        let given = factor.to_string();
        return Err(FitError::Smoothing { what: "the smoothing factor", given, allowed: "from 0 to 1" });
    }
    if !interference.is_finite() {
        return Err(FitError::Smoothing { what: "the interference", given: um(interference), allowed: "finite" });
    }
    if interference <= Length::default() {
        return Ok(interference);
    }
    Ok((interference - (rz_inner + rz_outer) * factor).max(Length::default()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn um(size: f64) -> Length {
        Length::new::<micrometer>(size)
    }

    fn left(interference: f64, rz_inner: f64, rz_outer: f64, factor: f64) -> f64 {
        effective_interference(um(interference), um(rz_inner), um(rz_outer), factor).unwrap().get::<micrometer>()
    }

    #[test]
    fn both_surfaces_are_flattened_by_the_factor() {
        // 30 - 0.8 (4 + 10) = 18.8; with 0.4: 24.4
        assert!((left(30.0, 4.0, 10.0, 0.8) - 18.8).abs() < 1e-9);
        assert!((left(30.0, 4.0, 10.0, 0.4) - 24.4).abs() < 1e-9);
    }

    #[test]
    fn flattened_peaks_never_open_a_gap_and_a_gap_is_not_widened() {
        assert!(left(5.0, 4.0, 10.0, 0.8).abs() < 1e-12);
        assert!((left(-5.0, 4.0, 10.0, 0.8) + 5.0).abs() < 1e-9);
    }

    #[test]
    fn impossible_inputs_are_refused_by_name() {
        for (rz, factor, wanted) in
            [(-1.0, 0.8, "inner part is -1 µm"), (4.0, 1.2, "factor is 1.2"), (4.0, f64::NAN, "factor")]
        {
            let said = effective_interference(um(30.0), um(rz), um(4.0), factor).unwrap_err().to_string();
            assert!(said.contains(wanted), "{said}");
        }
        assert!(effective_interference(um(f64::NAN), um(1.0), um(1.0), 0.8).is_err());
    }

    #[test]
    fn rz_is_assumed_six_times_ra() {
        assert!((rz_from_ra(um(1.6)).get::<micrometer>() - 9.6).abs() < 1e-9);
    }
}
