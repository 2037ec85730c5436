//! Every table of `pack.toml`.

use super::choices::{ACTS, CHEMICAL_KINDS, CONDITION_ROLES, FORMS, HAZARDS, QUANTITIES, READING_ROLES, VIEWS};
use super::{Field, Kind, Shape};

const fn needed(name: &'static str, kind: Kind, says: &'static str) -> Field {
    Field { name, kind, needed: true, says }
}

const fn may(name: &'static str, kind: Kind, says: &'static str) -> Field {
    Field { name, kind, needed: false, says }
}

const ID: Field = needed("id", Kind::Name, "Its name, unique among its kind; the words lie under it.");
const HOLDS: Kind = Kind::List(&Kind::Holds);

/// Every table, the whole pack first.
pub const EVERY: &[&Shape] = &[
    &PACK,
    &CONDITION,
    &OPTION,
    &INSTRUMENT,
    &READING,
    &SHOT,
    &CHEMICAL,
    &PART,
    &GEAR,
    &MIX,
    &EXCURSION,
    &PHASE,
    &STEP,
    &DWELL,
];

/// The whole document.
pub static PACK: Shape = Shape {
    name: "pack",
    says: "The service of one kind of equipment: what is asked, measured, photographed, mixed and done, in which order.",
    fields: &[
        needed("pack", Kind::Name, "The pack's name, also the name that assignments use."),
        needed("format", Kind::Whole(1, 1), "The version of this format: 1."),
        needed(
            "version",
            Kind::Version,
            "The version of this pack's content: three numbers with points. A later one replaces an earlier one.",
        ),
        may("condition", Kind::Tables(&CONDITION, 0), "Questions about the unit that decide which steps apply."),
        may("instrument", Kind::Tables(&INSTRUMENT, 0), "The technician's instruments."),
        may("reading", Kind::Tables(&READING, 0), "What is measured or read off."),
        may("shot", Kind::Tables(&SHOT, 0), "Photographs."),
        may("chemical", Kind::Tables(&CHEMICAL, 0), "What is used up by litres or grams."),
        may("part", Kind::Tables(&PART, 0), "What is built in and stays there."),
        may("gear", Kind::Tables(&GEAR, 0), "What comes along and goes home again."),
        may("mix", Kind::Tables(&MIX, 0), "Dilutions."),
        may("excursion", Kind::Tables(&EXCURSION, 0), "Controller settings that are changed for the work."),
        needed("phase", Kind::Tables(&PHASE, 1), "The work, in order."),
    ],
};

static CONDITION: Shape = Shape {
    name: "condition",
    says: "A question about the unit. Words: condition-<id>, condition-<id>-<option>.",
    fields: &[
        ID,
        needed("option", Kind::Tables(&OPTION, 2), "The answers, at least two."),
        may("role", Kind::Role(CONDITION_ROLES), "What the core makes of the answer, where it makes something of it."),
    ],
};

static OPTION: Shape = Shape {
    name: "option",
    says: "An answer to a question.",
    fields: &[ID, may("sets", HOLDS, "Facts that the answer sets.")],
};

static INSTRUMENT: Shape = Shape {
    name: "instrument",
    says: "An instrument with its maker's stated error. Words: instrument-<id>.",
    fields: &[
        ID,
        needed(
            "error-limit",
            Kind::Decimal,
            "Half width of the error limits in the unit of the reading's quantity, as text: \"0.5\".",
        ),
    ],
};

static READING: Shape = Shape {
    name: "reading",
    says: "A measured or read-off value. Words: reading-<id> with .hint.",
    fields: &[
        ID,
        needed("quantity", Kind::OneOf(QUANTITIES), "What it is; this settles the units."),
        may("decimals", Kind::Whole(0, 6), "Decimals that make sense."),
        may("least", Kind::Decimal, "Below this it cannot be: refused. Metric, as text."),
        may("most", Kind::Decimal, "Above this it cannot be: refused."),
        may("usual", Kind::Range, "Outside of this it is unusual: asked back."),
        may("instrument", Kind::NameOf("instrument"), "With what it is measured."),
        may(
            "as-found",
            Kind::NameOf("reading"),
            "The reading of the same thing as found, where this one is 'as left'.",
        ),
        may(
            "role",
            Kind::Role(READING_ROLES),
            "Its part in a computation of the core, or what the core compares it with.",
        ),
        may("preset", Kind::Decimal, "What is used until another value is read: the label values of mixes."),
        may(
            "plates",
            Kind::List(&Kind::NameOf("shot")),
            "Shots of plates, with view = \"plate\", whose code may tell it: it is offered, and taken once a person has pressed.",
        ),
        may("optional", Kind::Flag, "May be left out without a word."),
    ],
};

static SHOT: Shape = Shape {
    name: "shot",
    says: "A photograph. Words: shot-<id> with .show.",
    fields: &[
        ID,
        may("before", Kind::NameOf("shot"), "The shot of the same view before the work, where this one is 'after'."),
        may("required", Kind::Flag, "The record counts it as missing when it is not there. True if left out."),
        may(
            "view",
            Kind::OneOf(VIEWS),
            "What it shows, of the few things that are photographed again and again: its card then has a drawing of that.",
        ),
    ],
};

static CHEMICAL: Shape = Shape {
    name: "chemical",
    says: "Something used up by litres or grams. Words: chemical-<id>.",
    fields: &[
        ID,
        needed("kind", Kind::OneOf(CHEMICAL_KINDS), "What it must be kept apart from follows from this."),
        needed("form", Kind::OneOf(FORMS), "Measured by volume or by weight."),
    ],
};

static PART: Shape = Shape {
    name: "part",
    says: "Something that is built in. Words: part-<id>.",
    fields: &[
        ID,
        may("count", Kind::Whole(1, 1000), "How many a unit takes. 1 if left out."),
        may("spare", Kind::Flag, "Only taken along in case it is needed."),
    ],
};

static GEAR: Shape =
    Shape { name: "gear", says: "Something that comes along and goes home again. Words: gear-<id>.", fields: &[ID] };

static MIX: Shape = Shape {
    name: "mix",
    says: "A dilution, worked out from the label; at least one of parts-water, percent and dose. Words: mix-<id>, .concentrate, .water, .order-1 to .order-3, .gear.",
    fields: &[
        ID,
        may("chemical", Kind::NameOf("chemical"), "What is diluted."),
        may(
            "parts-water",
            Kind::NameOf("reading"),
            "The reading (a count) of the parts of water to one part of concentrate.",
        ),
        may(
            "percent",
            Kind::NameOf("reading"),
            "The reading (a share) of the concentrate's percentage of the ready mix.",
        ),
        may(
            "dose",
            Kind::NameOf("reading"),
            "The reading (a dose) of how much concentrate goes to one litre of water.",
        ),
        may(
            "cups",
            Kind::NameOf("reading"),
            "The reading (a count) of labels that add 'so many cups to a bucket': a witness, never the amount.",
        ),
        may("bucket", Kind::NameOf("reading"), "The reading (a volume) of that bucket."),
        may("loop", Kind::NameOf("reading"), "The reading (a volume) of what fills the loop with its hoses."),
        may("vessel", Kind::NameOf("reading"), "The reading (a volume) of what the vessel holds."),
        needed("total", Kind::NameOf("reading"), "The reading (a volume) of how much is wanted in all."),
    ],
};

static EXCURSION: Shape = Shape {
    name: "excursion",
    says: "A controller setting that is changed for the work and put back. Words: excursion-<id> with .why.",
    fields: &[ID, may("shot", Kind::NameOf("shot"), "The photograph of the setting that comes before its change.")],
};

static PHASE: Shape = Shape {
    name: "phase",
    says: "A part of the work. Words: phase-<id>; for the owner's summary .owner and .matters.",
    fields: &[
        ID,
        may(
            "after",
            Kind::List(&Kind::NameOf("phase")),
            "Phases of which every step is behind before this one begins.",
        ),
        needed("step", Kind::Tables(&STEP, 1), "The steps in the order in which they are offered."),
    ],
};

static STEP: Shape = Shape {
    name: "step",
    says: "One thing to do. Words: step-<id> with .why and, where the title is not enough, .how.",
    fields: &[
        ID,
        may(
            "when",
            Kind::List(&Kind::When),
            "Applies only with these answers: \"coil=coated\". A condition that stands twice may have either.",
        ),
        may("after", Kind::List(&Kind::NameOf("step")), "Steps, of any phase, that are behind before this one begins."),
        may("needs", HOLDS, "Facts needed before it may start."),
        may("starts", HOLDS, "Facts that hold once it has started; only with a dwell."),
        may("sets", HOLDS, "Facts that hold once it is done."),
        may("clears", Kind::List(&Kind::Fact), "Facts that are not known any more once it is done."),
        may("acts", Kind::List(&Kind::OneOf(ACTS)), "Momentary acts that the core judges."),
        may("cautions", Kind::List(&Kind::OneOf(HAZARDS)), "Hazards to show here."),
        may("alone", Kind::Flag, "A hazard step: shown one by one, not on a card with others."),
        may("asks", Kind::List(&Kind::NameOf("condition")), "Questions asked here."),
        may("readings", Kind::List(&Kind::NameOf("reading")), "Readings taken here."),
        may("shots", Kind::List(&Kind::NameOf("shot")), "Photographs taken here."),
        may("mix", Kind::NameOf("mix"), "The dilution prepared here."),
        may("dwell", Kind::Table(&DWELL), "The waiting time of this step. Words: the step's .then."),
        may("opens", Kind::NameOf("excursion"), "The setting changed here."),
        may("homes", Kind::NameOf("excursion"), "The setting put back here."),
        may("may-skip", Kind::Flag, "May be left out with a reason."),
        may("minutes", Kind::Whole(0, 600), "Minutes of handwork beside the waiting time, for planning a day."),
        may("parts", Kind::List(&Kind::NameOf("part")), "What is built in here."),
        may("gear", Kind::List(&Kind::NameOf("gear")), "What must be at hand here."),
    ],
};

static DWELL: Shape = Shape {
    name: "dwell",
    says: "A waiting time, in seconds.",
    fields: &[
        needed("least-s", Kind::Whole(1, 86_400), "Not done before."),
        needed("most-s", Kind::Whole(1, 172_800), "Done at the latest."),
    ],
};
