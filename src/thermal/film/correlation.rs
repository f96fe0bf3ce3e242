use super::super::error::ThermalError;
use crate::quantity::within;

/// Free convection: Nusselt number against Rayleigh and Prandtl number, each built on the length named with the variant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NaturalConvection {
    /// Horizontal cylinder, length = diameter, any Prandtl number:
    /// `Nu = (0.6 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))²`.
    ///
    /// **Valid for** 1e-5 ≤ Ra ≤ 1e12.
    ///
    /// **Source**: S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1049-1053.
    HorizontalCylinder,
    /// Vertical plate, length = height, whole range of flow:
    /// `Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))²`.
    ///
    /// **Valid for** 0.1 ≤ Ra ≤ 1e12; an upright cylinder too when its diameter exceeds `35 height / Gr^(1/4)`.
    ///
    /// **Source**: S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1323-1329.
    VerticalPlate,
    /// Horizontal face that the air leaves freely (warm face up, cold face down), length = area / perimeter:
    /// `Nu = 0.54 Ra^(1/4)` up to Ra = 1e7, `0.15 Ra^(1/3)` above, where the value jumps up by 6 %.
    ///
    /// **Valid for** 1e4 ≤ Ra ≤ 1e11.
    ///
    /// **Source**: W. H. McAdams, "Heat Transmission", 3rd ed. 1954, chapter 7 (from memory).
    FreeFace,
    /// Horizontal face that holds the air back (warm face down, cold face up), length = area / perimeter:
    /// `Nu = 0.27 Ra^(1/4)`.
    ///
    /// **Valid for** 1e5 ≤ Ra ≤ 1e10.
    ///
    /// **Source**: W. H. McAdams, "Heat Transmission", 3rd ed. 1954, chapter 7 (from memory).
    HeldFace,
    /// Sphere, length = diameter:
    /// `Nu = 2 + 0.589 Ra^(1/4) / F^(4/9) (1 + 7.44e-8 Ra / F^(16/9))^(1/12)`, `F = 1 + (0.469/Pr)^(9/16)`.
    ///
    /// **Valid for** Ra ≤ 1e11, Pr ≥ 0.5.
    ///
    /// **Source**: S. W. Churchill, in Heat Exchanger Design Handbook (1983), section 2.5.7 (from memory).
    Sphere,
}

/// Forced convection: Nusselt number against Reynolds and Prandtl number, each built on the length named with the variant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ForcedConvection {
    /// Cylinder across the flow, length = diameter: `Nu = 0.3 + 0.62 Re^(1/2) Pr^(1/3) / (1 + (0.4/Pr)^(2/3))^(1/4)
    /// (1 + (Re/282000)^(5/8))^(4/5)`.
    ///
    /// **Valid for** Re Pr ≥ 0.2, Re ≤ 1e7.
    ///
    /// **Source**: S. W. Churchill, M. Bernstein, J. Heat Transfer 99 (1977) 300-306.
    CylinderAcross,
    /// Flat plate along the flow, laminar, mean over its length: `Nu = 0.664 Re^(1/2) Pr^(1/3)`.
    ///
    /// **Valid for** 100 ≤ Re ≤ 5e5, Pr ≥ 0.6.
    ///
    /// **Source**: E. Pohlhausen 1921, as in F. P. Incropera and others, "Fundamentals of Heat and Mass Transfer",
    /// 6th ed., equation 7.30 (from memory).
    LaminarPlate,
}

/// Prandtl numbers that are taken, from gases to thick oils; correlations with a narrower range say so.
const PRANDTL: (f64, f64) = (0.5, 1e4);
/// Rayleigh number at which McAdams changes from laminar to turbulent.
const MCADAMS_TURBULENT: f64 = 1e7;

impl NaturalConvection {
    /// Lowest and highest Rayleigh number of the correlation.
    pub fn rayleigh_range(self) -> (f64, f64) {
        match self {
            Self::HorizontalCylinder => (1e-5, 1e12),
            Self::VerticalPlate => (0.1, 1e12),
            Self::FreeFace => (1e4, 1e11),
            Self::HeldFace => (1e5, 1e10),
            Self::Sphere => (0.0, 1e11),
        }
    }

    /// Nusselt number.
    ///
    /// # Errors
    /// [`ThermalError::Value`] with the limits of the correlation.
    pub fn nusselt(self, rayleigh: f64, prandtl: f64) -> Result<f64, ThermalError> {
        let ra = within("Rayleigh number", rayleigh, self.rayleigh_range(), "")?;
        let pr = within("Prandtl number", prandtl, PRANDTL, "")?;
        Ok(match self {
            Self::HorizontalCylinder => squared(0.6 + 0.387 * ra.cbrt().sqrt() * cylinder_factor(pr)),
            Self::VerticalPlate => squared(0.825 + 0.387 * ra.cbrt().sqrt() * plate_factor(pr)),
            Self::FreeFace if ra <= MCADAMS_TURBULENT => 0.54 * ra.sqrt().sqrt(),
            Self::FreeFace => 0.15 * ra.cbrt(),
            Self::HeldFace => 0.27 * ra.sqrt().sqrt(),
            Self::Sphere => sphere(ra, pr),
        })
    }
}

impl ForcedConvection {
    /// Lowest and highest Reynolds number of the correlation for a Prandtl number.
    pub fn reynolds_range(self, prandtl: f64) -> (f64, f64) {
        match self {
            Self::CylinderAcross => (0.2 / prandtl, 1e7),
            Self::LaminarPlate => (100.0, 5e5),
        }
    }

    /// Nusselt number.
    ///
    /// # Errors
    /// [`ThermalError::Value`] with the limits of the correlation.
    pub fn nusselt(self, reynolds: f64, prandtl: f64) -> Result<f64, ThermalError> {
        let lowest = match self {
            Self::CylinderAcross => PRANDTL.0,
            Self::LaminarPlate => 0.6,
        };
        let pr = within("Prandtl number", prandtl, (lowest, PRANDTL.1), "")?;
        let re = within("Reynolds number", reynolds, self.reynolds_range(pr), "")?;
        Ok(match self {
            Self::CylinderAcross => across_cylinder(re, across_factor(pr)),
            Self::LaminarPlate => 0.664 * re.sqrt() * pr.cbrt(),
        })
    }
}

pub(super) fn squared(x: f64) -> f64 {
    x * x
}

/// `(1 + (0.559/Pr)^(9/16))^(-8/27)`
pub(super) fn cylinder_factor(pr: f64) -> f64 {
    (1.0 + (0.559 / pr).powf(9.0 / 16.0)).powf(-8.0 / 27.0)
}

/// `(1 + (0.492/Pr)^(9/16))^(-8/27)`
pub(super) fn plate_factor(pr: f64) -> f64 {
    (1.0 + (0.492 / pr).powf(9.0 / 16.0)).powf(-8.0 / 27.0)
}

/// `0.62 Pr^(1/3) / (1 + (0.4/Pr)^(2/3))^(1/4)`
pub(super) fn across_factor(pr: f64) -> f64 {
    0.62 * pr.cbrt() / (1.0 + squared((0.4 / pr).cbrt())).sqrt().sqrt()
}

/// Churchill-Bernstein with the factor that depends on the Prandtl number alone.
pub(super) fn across_cylinder(re: f64, factor: f64) -> f64 {
    let x = (re / 282_000.0).sqrt();
    let turbulence = x * x.sqrt().sqrt();
    0.3 + factor * re.sqrt() * (1.0 + turbulence).powf(0.8)
}

fn sphere(ra: f64, pr: f64) -> f64 {
    let f = 1.0 + (0.469 / pr).powf(9.0 / 16.0);
    let turbulence = (1.0 + 7.44e-8 * ra / f.powf(16.0 / 9.0)).powf(1.0 / 12.0);
    2.0 + 0.589 * ra.sqrt().sqrt() / f.powf(4.0 / 9.0) * turbulence
}
