//! Volumes, areas and masses.

use super::*;

#[test]
fn volumes_and_areas_by_hand() {
    let close = |got: f64, want: f64| assert!((got / want - 1.0).abs() < 1e-12, "{got} {want}");
    let pi = std::f64::consts::PI;
    // Plug 20 x 30 mm; with the radius for the diameter it would be a quarter.
    let plug = Plug { outside: mm(20.0), length: mm(30.0) }.shape().unwrap();
    close(plug.volume.get::<cubic_meter>(), pi * 100.0 * 30.0 * 1e-9);
    close(plug.area.get::<square_meter>(), pi * (20.0 * 30.0 + 200.0) * 1e-6);
    assert_eq!(plug.path, ConductionPath::cylinder(mm(20.0)));
    let disc = Plug { outside: mm(60.0), length: mm(4.0) }.shape().unwrap();
    assert_eq!(disc.path, ConductionPath::both_faces(mm(4.0)));
    // Closed back wall: the boss without its bore hollow, outside all round.
    let back_wall = Some(BackWall { thickness: mm(5.0), hole: None });
    let boss = Boss { bore: mm(62.0), outside: mm(90.0), length: mm(21.0), back_wall }.shape().unwrap();
    close(boss.volume.get::<cubic_meter>(), pi * (45.0 * 45.0 * 21.0 - 31.0 * 31.0 * 16.0) * 1e-9);
    close(boss.area.get::<square_meter>(), pi * (90.0 * 21.0 + 62.0 * 16.0 + 2.0 * 45.0 * 45.0) * 1e-6);
    let open = Boss { bore: mm(62.0), outside: mm(90.0), length: mm(21.0), back_wall: None }.shape().unwrap();
    let ring = Ring { bore: mm(62.0), outside: mm(90.0), width: mm(21.0) }.shape().unwrap();
    assert_eq!(open, ring);
    let shaft = ShaftLength { outside: mm(30.0), bore: Some(mm(10.0)), length: mm(50.0) }.shape().unwrap();
    close(shaft.volume.get::<cubic_meter>(), pi * 200.0 * 50.0 * 1e-9);
    close(shaft.area.get::<square_meter>(), pi * 1500.0 * 1e-6);
    close(shaft.path.length.get::<millimeter>(), 10.0);
    close(shaft.path.divisor, 3.0);
}

#[test]
fn impossible_shapes_are_refused() {
    let swapped = Ring { bore: mm(62.0), outside: mm(52.0), width: mm(16.0) }.shape().unwrap_err();
    assert!(swapped.to_string().contains("52 mm but must exceed"), "{swapped}");
    assert!(Ring { bore: mm(52.0), outside: mm(62.0), width: mm(0.0) }.shape().is_err());
    let wall = |thickness, hole| Some(BackWall { thickness: mm(thickness), hole: Some(mm(hole)) });
    let boss = |back_wall| Boss { bore: mm(62.0), outside: mm(90.0), length: mm(21.0), back_wall }.shape();
    assert!(boss(wall(5.0, 70.0)).is_err() && boss(wall(21.0, 40.0)).is_err() && boss(wall(5.0, 40.0)).is_ok());
    let ring = Ring { bore: mm(52.0), outside: mm(62.0), width: mm(16.0) }.shape().unwrap();
    let density = MassDensity::new::<kilogram_per_cubic_meter>(7810.0);
    assert!(ring.mass(density, 0.0).is_err() && ring.mass(density, 1.2).is_err());
    let half = ring.mass(density, 0.5).unwrap() * 2.0;
    assert!((half - ring.mass(density, 1.0).unwrap()).abs() < Mass::new::<kilogram>(1e-12));
}
