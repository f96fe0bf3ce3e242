//! The 8-node axisymmetric quadrilateral.
//!
//! Serendipity functions and isotropic elasticity as in O. C. Zienkiewicz and R. L. Taylor, "The Finite Element Method",
//! vol. 1 (from memory). The stiffness is integrated at 3 × 3 points: 2 × 2 would be cheaper and softer, but lets an
//! element take the pattern `u_r = ξ (3η² - 1)`, `u_z = -η (3ξ² - 1)` without strain at any of the four points, and a
//! singular corner excites it. Stresses are read at the 2 × 2 points, where they are most accurate.

use std::f64::consts::PI;

/// Natural coordinates of the nodes: corners, then middles of the sides.
const NODES: [[f64; 2]; 8] =
    [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0], [0.0, -1.0], [1.0, 0.0], [0.0, 1.0], [-1.0, 0.0]];
/// Gauss-Legendre points and weights of order three: `±√(3/5)`, 0; 5/9, 8/9.
const GAUSS_3: [(f64, f64); 3] =
    [(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];
/// Gauss-Legendre points of order two, `±1/√3`.
const GAUSS_2: f64 = 0.577_350_269_189_625_8;

/// Lamé's constants of a material, Pa.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lame {
    lambda: f64,
    mu: f64,
}

/// Stress at a point, Pa: radial, axial, hoop, and shear between radial and axial.
pub(super) type Tensor = [f64; 4];

/// Shape functions at a point of an element.
#[derive(Clone, Copy, Debug)]
pub(super) struct Point {
    pub(super) shape: [f64; 8],
    /// Derivatives to r and z, 1/m.
    pub(super) gradient: [[f64; 2]; 8],
    /// Share of the volume that the point stands for, `2πr |J| w`, m³.
    pub(super) volume: f64,
    radius: f64,
}

/// Stiffness of an element, N/m, and its nodal forces for a free thermal strain of one, N; rows are `2 node + direction`.
pub(super) struct Stiffness {
    pub(super) matrix: [[f64; 16]; 16],
    pub(super) thermal: [f64; 16],
}

impl Lame {
    /// `λ = E ν/((1 + ν)(1 - 2ν))`, `μ = E/(2 (1 + ν))`.
    pub(super) fn new(modulus: f64, poisson: f64) -> Self {
        let lambda = modulus * poisson / ((1.0 + poisson) * (1.0 - 2.0 * poisson));
        Self { lambda, mu: modulus / (2.0 * (1.0 + poisson)) }
    }

    /// Stress of a strain (radial, axial, hoop, shear angle).
    fn stress(&self, strain: [f64; 4]) -> Tensor {
        let volume = self.lambda * (strain[0] + strain[1] + strain[2]);
        let direct = |k: usize| volume + 2.0 * self.mu * strain[k];
        [direct(0), direct(1), direct(2), self.mu * strain[3]]
    }

    /// Pressure of a hindered thermal strain of one: `3λ + 2μ = E/(1 - 2ν)`.
    fn bulk(&self) -> f64 {
        3.0 * self.lambda + 2.0 * self.mu
    }
}

/// Shape functions and their derivatives to the natural coordinates.
fn shape(xi: f64, eta: f64) -> [[f64; 3]; 8] {
    NODES.map(|[a, b]| {
        let (p, q) = (1.0 + a * xi, 1.0 + b * eta);
        if a.abs() < 0.5 {
            let bow = 1.0 - xi * xi;
            [bow * q / 2.0, -xi * q, b * bow / 2.0]
        } else if b.abs() < 0.5 {
            let bow = 1.0 - eta * eta;
            [bow * p / 2.0, a * bow / 2.0, -eta * p]
        } else {
            let rest = a * xi + b * eta - 1.0;
            [p * q * rest / 4.0, a * q * (p + rest) / 4.0, b * p * (q + rest) / 4.0]
        }
    })
}

impl Point {
    /// The point of an element at natural coordinates; `None` when the element is turned inside out there.
    pub(super) fn new(nodes: &[[f64; 2]; 8], [xi, eta]: [f64; 2], weight: f64) -> Option<Self> {
        let functions = shape(xi, eta);
        let mut jacobian = [[0.0; 2]; 2];
        let mut radius = 0.0;
        for (function, node) in functions.iter().zip(nodes) {
            radius += function[0] * node[0];
            for d in 0..2 {
                jacobian[d][0] += function[d + 1] * node[0];
                jacobian[d][1] += function[d + 1] * node[1];
            }
        }
        let [[rx, zx], [re, ze]] = jacobian;
        let area = rx * ze - zx * re;
        if area <= 0.0 || radius <= 0.0 {
            return None;
        }
        let gradient = functions.map(|[_, x, e]| [(ze * x - zx * e) / area, (rx * e - re * x) / area]);
        let volume = 2.0 * PI * radius * area * weight;
        Some(Self { shape: functions.map(|f| f[0]), gradient, volume, radius })
    }

    /// Stress there, for the displacements of the nodes and a free thermal strain.
    pub(super) fn stress(&self, lame: &Lame, displacement: &[[f64; 2]; 8], thermal: f64) -> Tensor {
        let mut strain = [-thermal, -thermal, -thermal, 0.0];
        for ((shape, [dr, dz]), [u, w]) in self.shape.iter().zip(&self.gradient).zip(displacement) {
            strain[0] += dr * u;
            strain[1] += dz * w;
            strain[2] += shape / self.radius * u;
            strain[3] += dz * u + dr * w;
        }
        lame.stress(strain)
    }
}

/// The 3 × 3 points of an element; `None` where it is turned inside out.
pub(super) fn points(nodes: &[[f64; 2]; 8]) -> impl Iterator<Item = Option<Point>> + '_ {
    GAUSS_3
        .into_iter()
        .flat_map(move |(eta, we)| GAUSS_3.into_iter().map(move |(xi, wx)| Point::new(nodes, [xi, eta], wx * we)))
}

/// Nodal forces for a free thermal strain of one at each node, by rows, the strain between them as the shape functions
/// say: `∫ Bᵀ D (1, 1, 1, 0)ᵀ N dV`, N.
pub(super) fn strain_forces(nodes: &[[f64; 2]; 8], lame: &Lame) -> Option<[[f64; 8]; 16]> {
    let mut forces = [[0.0; 8]; 16];
    for point in points(nodes) {
        let point = point?;
        let bulk = lame.bulk() * point.volume;
        for a in 0..8 {
            let [ar, az] = point.gradient[a];
            let radial = ar + point.shape[a] / point.radius;
            for (b, shape) in point.shape.iter().enumerate() {
                forces[2 * a][b] += bulk * radial * shape;
                forces[2 * a + 1][b] += bulk * az * shape;
            }
        }
    }
    Some(forces)
}

/// Stiffness and thermal forces; `None` when the element is turned inside out.
pub(super) fn stiffness(nodes: &[[f64; 2]; 8], lame: &Lame) -> Option<Stiffness> {
    let mut sum = Stiffness { matrix: [[0.0; 16]; 16], thermal: [0.0; 16] };
    for point in points(nodes) {
        sum.add(&point?, lame);
    }
    for row in 0..16 {
        for column in row + 1..16 {
            sum.matrix[row][column] = sum.matrix[column][row];
        }
    }
    Some(sum)
}

impl Stiffness {
    /// Adds `Bᵀ D B dV` of a point, the blocks on and below the diagonal; they are written out.
    fn add(&mut self, point: &Point, lame: &Lame) {
        let stiff = (lame.lambda + 2.0 * lame.mu) * point.volume;
        let (lambda, mu) = (lame.lambda * point.volume, lame.mu * point.volume);
        let bulk = lame.bulk() * point.volume;
        for a in 0..8 {
            let ([ar, az], ah) = (point.gradient[a], point.shape[a] / point.radius);
            self.thermal[2 * a] += bulk * (ar + ah);
            self.thermal[2 * a + 1] += bulk * az;
            for b in 0..=a {
                let ([br, bz], bh) = (point.gradient[b], point.shape[b] / point.radius);
                let radial = stiff * (ar * br + ah * bh) + lambda * (ar * bh + ah * br) + mu * az * bz;
                self.matrix[2 * a][2 * b] += radial;
                self.matrix[2 * a][2 * b + 1] += lambda * (ar + ah) * bz + mu * az * br;
                self.matrix[2 * a + 1][2 * b] += lambda * az * (br + bh) + mu * ar * bz;
                self.matrix[2 * a + 1][2 * b + 1] += stiff * az * bz + mu * ar * br;
            }
        }
    }
}

/// Stresses at the nodes for displacements and free thermal strains of the nodes, from those at the 2 × 2 points continued linearly (E. Hinton and J. S. Campbell, "Local and
/// global smoothing of discontinuous finite element functions", 1974, from memory).
pub(super) fn at_nodes(
    nodes: &[[f64; 2]; 8],
    lame: &Lame,
    displacement: &[[f64; 2]; 8],
    thermal: &[f64; 8],
) -> Option<[Tensor; 8]> {
    let mut nodal = [[0.0; 4]; 8];
    for [sx, se] in [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]] {
        let point = Point::new(nodes, [sx * GAUSS_2, se * GAUSS_2], 1.0)?;
        let free = point.shape.iter().zip(thermal).map(|(shape, strain)| shape * strain).sum();
        let stress = point.stress(lame, displacement, free);
        for (sum, [xi, eta]) in nodal.iter_mut().zip(NODES) {
            let share = (1.0 + sx * xi / GAUSS_2) * (1.0 + se * eta / GAUSS_2) / 4.0;
            for (part, stress) in sum.iter_mut().zip(stress) {
                *part += share * stress;
            }
        }
    }
    Some(nodal)
}
