//! Distributions from which a quantity is drawn.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};
use rand_distr::{Distribution as _, StandardNormal};
use thiserror::Error;

/// How a quantity is distributed; numbers are in SI units.
#[derive(Clone, Debug, PartialEq)]
pub enum Distribution {
    /// Always the same.
    Fixed(f64),
    /// Evenly from `low` to `high`.
    Uniform {
        /// Least.
        low: f64,
        /// Most.
        high: f64,
    },
    /// Normal; what falls outside `low` to `high` is drawn again.
    Normal {
        /// Mean before anything is drawn again.
        mean: f64,
        /// Standard deviation before.
        deviation: f64,
        /// Least; may be minus infinity.
        low: f64,
        /// Most; may be infinity.
        high: f64,
    },
    /// One of these, each as likely.
    Listed(Vec<f64>),
}

/// Why a distribution is impossible.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum DistributionError {
    /// A number is not finite, or two are the wrong way round.
    #[error("a distribution from {low} to {high} has no values")]
    Empty {
        /// Least.
        low: f64,
        /// Most.
        high: f64,
    },
    /// The mean does not lie between the limits.
    #[error("the mean lies {beyond_um:.1} µm beyond the limits, or on one; a capability needs a mean between them")]
    Mean {
        /// How far, µm.
        beyond_um: f64,
    },
}

impl Distribution {
    /// Normal between limits, the mean in their middle unless stated, with a capability index: the distance of the mean
    /// from the nearer limit over three standard deviations (Cpk of ISO 22514-2, from memory).
    ///
    /// Parts beyond the limits are sorted out, unless `unsorted`.
    ///
    /// # Errors
    /// [`DistributionError`] when the limits are the wrong way round, or the mean does not lie between them.
    pub fn capable(
        (low, high): (f64, f64),
        capability: f64,
        mean: Option<f64>,
        unsorted: bool,
    ) -> Result<Self, DistributionError> {
        if !(low <= high && low.is_finite() && high.is_finite()) {
            return Err(DistributionError::Empty { low, high });
        }
        let mean = mean.unwrap_or(0.5 * (low + high));
        let room = (mean - low).min(high - mean);
        if high <= low {
            return Ok(Self::Fixed(low));
        }
        // Not above zero, or not a number.
        if !matches!(room.partial_cmp(&0.0), Some(std::cmp::Ordering::Greater)) {
            return Err(DistributionError::Mean { beyond_um: -room * 1e6 });
        }
        let deviation = room / (3.0 * capability);
        let (low, high) = if unsorted { (f64::NEG_INFINITY, f64::INFINITY) } else { (low, high) };
        Ok(Self::Normal { mean, deviation, low, high })
    }

    /// Whether it is always the same.
    pub fn is_fixed(&self) -> bool {
        let (low, high) = self.ends();
        high <= low
    }

    /// Least and most that can be drawn, where there are such.
    pub fn ends(&self) -> (f64, f64) {
        match self {
            Self::Fixed(value) => (*value, *value),
            Self::Uniform { low, high } | Self::Normal { low, high, .. } => (*low, *high),
            Self::Listed(values) => {
                values.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), &v| (a.min(v), b.max(v)))
            }
        }
    }

    /// A value in the midst of it.
    pub fn middle(&self) -> f64 {
        match self {
            Self::Fixed(value) => *value,
            Self::Uniform { low, high } => 0.5 * (low + high),
            Self::Normal { mean, .. } => *mean,
            Self::Listed(values) => values.iter().sum::<f64>() / values.len().max(1) as f64,
        }
    }

    /// One value.
    pub fn draw(&self, random: &mut Random) -> f64 {
        match self {
            Self::Fixed(value) => *value,
            Self::Uniform { low, high } => low + (high - low) * random.even(),
            Self::Normal { mean, deviation, low, high } => loop {
                let value = mean + deviation * random.normal();
                if (*low..=*high).contains(&value) {
                    return value;
                }
            },
            Self::Listed(values) => {
                // Below the length, for `even` stays below one.
                #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
                let place = (random.even() * values.len() as f64) as usize;
                values.get(place).or(values.last()).copied().unwrap_or_default()
            }
        }
    }
}

/// Random numbers of one chunk.
///
/// **Source**: ChaCha with 8 rounds, D. J. Bernstein, "ChaCha, a variant of Salsa20" (2008); a seed names the key, a chunk
/// its stream. Normal values by the ziggurat of G. Marsaglia, W. W. Tsang, J. Stat. Softw. 5 (2000) 8.
pub struct Random(ChaCha8Rng);

impl Random {
    /// The numbers of one chunk of a seed.
    pub fn new(seed: u64, chunk: u64) -> Self {
        let mut generator = ChaCha8Rng::seed_from_u64(seed);
        generator.set_stream(chunk);
        Self(generator)
    }

    /// Evenly from 0 up to, and without, 1.
    pub fn even(&mut self) -> f64 {
        const STEP: f64 = 1.0 / (1_u64 << 53) as f64;
        (self.0.next_u64() >> 11) as f64 * STEP
    }

    /// Normal with mean 0 and standard deviation 1.
    pub fn normal(&mut self) -> f64 {
        StandardNormal.sample(&mut self.0)
    }
}
