//! All that the temperature of a node says about its heat and size, read at once.

use super::property::Property;

/// Parts of the range for each row of the tables.
const PARTS_PER_ROW: usize = 4;

/// Between two neighbouring rows of any of the tables: values where it begins and their slopes.
#[derive(Clone, Copy, Debug, Default)]
struct Stretch {
    from: f64,
    /// Where the next one begins.
    to: f64,
    /// Value, half the slope and integral of the capacity.
    held: [f64; 3],
    /// The same of the conductivity.
    passed: [f64; 3],
    /// Free strain and its slope.
    strain: [f64; 2],
}

/// What a node holds, passes on and grows by.
#[derive(Clone, Copy, Debug)]
pub(super) struct AtNode {
    /// `∫c dT`, J/kg.
    pub(super) enthalpy: f64,
    /// `∫k dT`, W/m.
    pub(super) potential: f64,
    /// Free strain.
    pub(super) strain: f64,
}

/// Capacity, conductivity and strain of a solid over the rows of all three.
///
/// One look for the place serves all of them: three were a fifth of a history.
#[derive(Clone, Debug)]
pub(super) struct Curves {
    /// The first lies before the first row, the last behind the last.
    stretches: Vec<Stretch>,
    /// For each even part, the last stretch that begins at or below its lower end.
    index: Vec<usize>,
    first: f64,
    parts_per_kelvin: f64,
}

impl Curves {
    pub(super) fn new(capacity: &Property, conductivity: &Property, strain: &Property) -> Self {
        let mut rows: Vec<f64> = [capacity, conductivity, strain].into_iter().flat_map(Property::kelvins).collect();
        rows.sort_by(f64::total_cmp);
        rows.dedup();
        if rows.is_empty() {
            rows.push(0.0);
        }
        let (first, last) = (rows[0], rows[rows.len() - 1]);
        let stretch = |place: usize| {
            let from = rows[place.saturating_sub(1)];
            // Before the first row and behind the last any other place tells the slope.
            let to = if place == 0 { first - 1.0 } else { rows.get(place).copied().unwrap_or(last + 1.0) };
            let curve = |table: &Property| {
                let (value, integral) = table.value_and_integral(from);
                [value, (table.at(to) - value) / (to - from) / 2.0, integral]
            };
            let [start, half, _] = curve(strain);
            let to = rows.get(place).copied().unwrap_or(f64::INFINITY);
            Stretch { from, to, held: curve(capacity), passed: curve(conductivity), strain: [start, 2.0 * half] }
        };
        let stretches: Vec<Stretch> = (0..=rows.len()).map(stretch).collect();
        let parts = PARTS_PER_ROW * rows.len();
        let parts_per_kelvin = if last > first { parts as f64 / (last - first) } else { 0.0 };
        let below = |part: usize| {
            let kelvin = first + (last - first) * part as f64 / parts as f64;
            // All below the first row falls into the first part.
            if part == 0 { 0 } else { rows.partition_point(|row| *row <= kelvin) }
        };
        let index = (0..=parts).map(below).collect();
        Self { stretches, index, first, parts_per_kelvin }
    }

    #[inline]
    pub(super) fn at(&self, kelvin: f64) -> AtNode {
        let (stretch, step) = self.stretch(kelvin);
        let integral = |[value, half, sum]: [f64; 3]| sum + step * (value + step * half);
        AtNode {
            enthalpy: integral(stretch.held),
            potential: integral(stretch.passed),
            strain: stretch.strain[0] + step * stretch.strain[1],
        }
    }

    /// Capacity, J/(kg K), and conductivity, W/(m K).
    pub(super) fn capacity_and_conductivity(&self, kelvin: f64) -> [f64; 2] {
        let (stretch, step) = self.stretch(kelvin);
        [stretch.held, stretch.passed].map(|[value, half, _]| value + 2.0 * half * step)
    }

    /// The stretch that a temperature lies in, and how far in it, K.
    #[inline]
    fn stretch(&self, kelvin: f64) -> (&Stretch, f64) {
        // Of 32 bits, to which a processor converts in one step and below which it ends at zero.
        let part = ((kelvin - self.first) * self.parts_per_kelvin) as u32 as usize;
        let mut place = self.index[part.min(self.index.len() - 1)];
        let mut stretch = &self.stretches[place];
        while kelvin >= stretch.to {
            place += 1;
            let Some(next) = self.stretches.get(place) else { break };
            stretch = next;
        }
        (stretch, kelvin - stretch.from)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_look_says_what_the_three_tables_say() {
        let capacity = Property::new(&[(70.0, 170.0), (71.0, 180.0), (200.0, 410.0), (500.0, 530.0)]).unwrap();
        let conductivity = Property::new(&[(60.0, 30.0), (200.0, 45.0), (450.0, 42.0)]).unwrap();
        let strain = Property::new(&[(77.0, -2e-3), (293.15, 0.0), (400.0, 1.4e-3)]).unwrap();
        let (line, constant) = (Property::line(12e-6, 293.15), Property::constant(40.0));
        for (conductivity, strain) in [(&conductivity, &strain), (&constant, &line), (&constant, &strain)] {
            let curves = Curves::new(&capacity, conductivity, strain);
            for tenth in 300..6000 {
                let kelvin = 0.1 * f64::from(tenth);
                let found = curves.at(kelvin);
                let (enthalpy, potential) =
                    (capacity.value_and_integral(kelvin).1, conductivity.value_and_integral(kelvin).1);
                assert!((found.enthalpy - enthalpy).abs() < 1e-7, "{kelvin} K: {found:?}");
                assert!((found.potential - potential).abs() < 1e-7, "{kelvin} K: {found:?}");
                assert!((found.strain - strain.at(kelvin)).abs() < 1e-12, "{kelvin} K: {found:?}");
                let [held, passed] = curves.capacity_and_conductivity(kelvin);
                assert!((held - capacity.at(kelvin)).abs() < 1e-9, "{kelvin} K: {held}");
                assert!((passed - conductivity.at(kelvin)).abs() < 1e-9, "{kelvin} K: {passed}");
            }
        }
        // Nothing varies: no table has a row.
        let all = Curves::new(&constant, &constant, &line).at(250.0);
        assert!((all.enthalpy - 40.0 * 250.0).abs() < 1e-9 && (all.strain - line.at(250.0)).abs() < 1e-15);
    }
}
