use super::{Scatter, StackError};
use crate::quantity::{Length, Nanometres};
use uom::si::length::{meter, millimeter};

/// What a dimension does to the play.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// It opens it: the depth of a seat.
    Opens,
    /// It fills it: the width of a part.
    Fills,
}

/// One dimension of a stack.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Link {
    /// Lower limit.
    pub least: Length,
    /// Upper limit.
    pub most: Length,
    /// What it does to the play.
    pub way: Way,
}

impl Link {
    /// Upper less lower limit.
    pub fn width(&self) -> Length {
        self.most - self.least
    }
}

/// A length between two ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ends {
    /// Least.
    pub least: Length,
    /// In the middle.
    pub middle: Length,
    /// Most.
    pub most: Length,
}

/// Dimensions along one axis that leave a play between them; negative is too full.
#[derive(Clone, Debug, PartialEq)]
pub struct Chain {
    links: Vec<Link>,
}

impl Chain {
    /// Checks the dimensions, and takes each limit to the nearest nanometre: sums of them are exact, so that a play of nothing
    /// is nothing.
    ///
    /// # Errors
    /// [`StackError`] for none at all, or one that is no length with its limits in order.
    pub fn new(links: Vec<Link>) -> Result<Self, StackError> {
        if links.is_empty() {
            return Err(StackError::Empty);
        }
        let mut links = links;
        for (number, link) in links.iter_mut().enumerate() {
            let [least, most] = [link.least, link.most].map(|size| size.get::<millimeter>());
            if !(least.is_finite() && most.is_finite() && least >= 0.0 && least <= most) {
                return Err(StackError::Limits { number: number + 1, least, most });
            }
            (link.least, link.most) = (whole(link.least), whole(link.most));
        }
        Ok(Self { links })
    }

    /// The dimensions.
    pub fn links(&self) -> &[Link] {
        &self.links
    }

    fn sum(&self, opens: impl Fn(&Link) -> Length, fills: impl Fn(&Link) -> Length) -> Length {
        let signed = |link: &Link| match link.way {
            Way::Opens => Nanometres::from_length(opens(link)),
            Way::Fills => -Nanometres::from_length(fills(link)),
        };
        self.links.iter().map(signed).fold(Nanometres::default(), |sum, part| sum + part).length()
    }

    /// Play with every dimension at the worse of its limits: no assembly within the limits lies outside it.
    pub fn worst_case(&self) -> Ends {
        let (least, most) =
            (self.sum(|link| link.least, |link| link.most), self.sum(|link| link.most, |link| link.least));
        Ends { least, middle: (least + most) / 2.0, most }
    }

    /// Play within the root of the summed squares of the tolerances: 997 of 1000 assemblies, if each dimension is distributed
    /// normally about the middle of its limits, with three standard deviations to either limit, and none depends on another.
    ///
    /// **Source**: the root-sum-square rule of statistical tolerancing, as in Shigley's Mechanical Engineering Design.
    pub fn root_sum_square(&self) -> Ends {
        let squares: f64 = self.links.iter().map(|link| (link.width().get::<meter>() / 2.0).powi(2)).sum();
        let (middle, half) = (self.worst_case().middle, Length::new::<meter>(squares.sqrt()));
        Ends { least: middle - half, middle, most: middle + half }
    }

    /// Play when every size within the limits of a part is as likely as any other: more scatter than most shops have.
    pub fn scatter(&self) -> Scatter {
        let widths: Vec<f64> = self.links.iter().map(|link| link.width().get::<meter>()).collect();
        Scatter::of(self.worst_case().middle.get::<meter>(), &widths)
    }

    /// The dimension whose limits lie farthest apart; the first of several.
    pub fn widest(&self) -> usize {
        let widths = self.links.iter().map(Link::width).enumerate();
        widths.fold((0, Length::default()), |best, next| if next.1 > best.1 { next } else { best }).0
    }
}

/// A length to the nearest nanometre.
fn whole(length: Length) -> Length {
    Nanometres::from_length(length).length()
}
