use super::{LEGEND, Page, page};
use crate::plan::chart::Chart;
use crate::quantity::System;
use minijinja::{Environment, context};

/// Charts as one page to print: no script, nothing fetched, readable in black and white.
///
/// # Errors
/// None in practice: the template is part of the program.
pub fn html(charts: &[Chart], system: System) -> Result<String, minijinja::Error> {
    let mut environment = Environment::new();
    // A name that ends in .html has its values escaped.
    environment.add_template("chart.html", include_str!("chart.html"))?;
    let charts: Vec<minijinja::Value> = charts.iter().map(|chart| of_one(&page(chart, system))).collect();
    environment.get_template("chart.html")?.render(context! { charts, legend => LEGEND })
}

fn of_one(page: &Page) -> minijinja::Value {
    let rows: Vec<minijinja::Value> = page
        .rows
        .iter()
        .map(|(outer, cells)| {
            let cells: Vec<minijinja::Value> =
                cells.iter().map(|cell| context! { kind => cell.kind, lines => cell.lines }).collect();
            context! { outer, cells }
        })
        .collect();
    let cautions: Vec<minijinja::Value> =
        page.cautions.iter().map(|(level, text)| context! { level => level.to_uppercase(), text }).collect();
    context! {
        title => page.title,
        subtitle => page.subtitle,
        corner => page.corner,
        columns => page.columns,
        rows,
        reasons => page.reasons,
        cautions,
    }
}
