# The words of the day: due days and cover, the load list, the order of the day, what was used, history.

## Due days and cover

due-today = Due today
due-tomorrow = Due tomorrow
due-yesterday = Due yesterday
due-in = Due in { $days } days
due-ago = Due { $days } days ago
due-without-cover = { $when } ({ $on }).
due-with-cover = { $when }, { $cover }.
cover-ends-in = cover ends in { $days }
cover-ends-today = cover ends today
cover-ended-yesterday = cover ended yesterday
cover-ended-ago = cover ended { $days } days ago
due-from-last = Last service { $from }, every { $months } months: { $on }; days of grace: { $grace }, until { $end }.
due-from-first = In service since { $from }, first service within { $months } months: { $on }; days of grace: { $grace }, until { $end }.

cover-title = Terms of cover
cover-as-asked = By the terms “{ $terms }”: what they ask for is there, as far as can be seen here. The desk decides.
cover-not-as-asked = By the terms “{ $terms }”: not all that they ask for is there. The desk decides.
cover-not-known = By the terms “{ $terms }”: not all can be told here. The desk decides.
cover-in-time = In time: due on { $on }.
cover-in-grace = Past due, days: { $days }. Within the days of grace, which end on { $end }.
cover-late = The days of grace ended on { $end }, days ago: { $days }.
cover-day-not-known = From which day to count is not known here.
cover-accredited = “{ $name }” holds until { $until }.
cover-accredited-always = “{ $name }” holds.
cover-lapsed = “{ $name }” lapsed on { $on }.
cover-not-accredited = The technician has no “{ $name }”.
cover-accreditation-not-known = Whether the technician has “{ $name }” is not known here.
cover-no-shot = No photograph: { $shot }.
cover-no-reading = No reading: { $reading }.
cover-evidence = All photographs and readings that they ask for are there: { $count }.
cover-shot-not-in-pack = They ask for a photograph that this procedure does not have: { $shot }.
cover-reading-not-in-pack = They ask for a reading that this procedure does not have: { $reading }.
cover-stopped = The visit was stopped before its end.

## Accreditations

lapse-title = Accreditations
lapse-lapsed = “{ $name }” lapsed on { $on }.
lapse-soon = “{ $name }” holds until { $on }, days left: { $days }.
lapse-none = You have no “{ $name }”.
lapse-means = Asked for by the terms of cover at: { $sites }. Talk to the office before you go there.
lapse-means-soon = Asked for by the terms of cover at: { $sites }. Renew it in time.
lapse-means-nothing = No visit of this round asks for it.

## The order of the day

round-later = Later
round-to-load = Load list of the day
round-there = There about { $arrive }, done about { $leave }.
round-there-way = There about { $arrive } after { $km } km, done about { $leave }.
round-wait = Work begins at { $begin }, as agreed.
round-forecast-past = Time on site about { $minutes } min: the middle of { $visits } past visits, half of which took { $least } to { $most } min.
round-forecast-steps = Time on site about { $minutes } min by the steps of the procedure; { $least } min of it are sure.
round-forecast-none = How long it takes is not known here.
round-agreed = Agreed: { $from } to { $until }.
round-agreed-past = Agreed for { $day }, { $from } to { $until }. That day is past: agree on another time.
round-late = Cannot be kept: agreed until { $until }, there at { $arrive } at the earliest. Call the owner.
round-way-how = Ways are straight lines times { $detour } at { $speed } km/h (common practice, no source): good for an order, not for an arrival to the minute.
round-finding = Still open since { $date }: { $text }
round-sees-history = Unit { $letter }: what past visits say

## The load list

load-title = Load list
load-of-day = { $day }: { $count } visits
load-nothing = Nothing is due, so there is nothing to load.
load-van = Acids, hypochlorite and alkalis never beside each other
    .text = Each in a tray of its own, upright and closed, apart from each other and from food. Acid on chlorine products gives a gas that kills. The label and local rules for the road come first.
load-acids = Acids: a tray of their own
load-hypochlorites = Hypochlorite: a tray of its own, away from acids
load-alkalis = Alkalis: a tray of their own, away from acids
load-neutrals = Neutral cleaners and others
load-what = What
load-take = Take along
load-mixes = The mixes take
load-for = For
load-all = all
load-count = How many
load-sure-maybe = { $sure } + { $maybe } if needed
load-maybe = { $maybe } if needed
load-margin = Chemicals: { $percent } % more than the mixes take (common practice, no source), rounded up. Amounts are those of the usual mixes; the label comes first.
load-if-needed = ‘If needed’: depends on a question that nobody has answered for the unit yet, or a spare.
load-parts = Parts
load-gear = Gear
load-instruments = Instruments
load-spill-kit = Spill kit for acid
load-eyewash = Eyewash bottle
load-no-pack = The procedure of { $site } is not known here ({ $pack }). Nothing is listed for it.
load-none = none

## What was used

menu-used = What was used
used-title = What was used
used-text = Worked out from mixes, steps and the clock. Correct what was otherwise; both stand in the record.
used-time = Time on site
used-worked = Worked out: { $amount }
used-corrected = Corrected: { $amount }
used-what = What
used-amount = Amount
used-nothing = The procedure names no chemicals and no parts.
used-sealed = The record is sealed. What was used stands in it.

## History

menu-history = History
history-none = Past visits of this unit are not known here.
history-findings = Findings still open
history-finding = { $date } · { $severity }: { $text }
history-no-findings = No finding of a past visit is open.
history-readings = Readings over the years
history-trends = Where they go
history-reading = Reading
history-trend = A year
history-means = What it says
history-per-year = { $slope } a year ({ $least } to { $most })
history-rises = It rises, beyond doubt of the scatter.
history-falls = It falls, beyond doubt of the scatter.
history-no-trend = No trend that can be told.
history-too-few = Too few visits for a trend: { $count } of { $least }.
history-method = The middle of the slopes between all pairs of years (Theil and Sen), with its range of 95 %. It says nothing of the instruments' own errors, nor why.
history-descale = Next descaling: about { $on }, by the readings of { $from } ({ $least } to { $most } months from then).
history-descale-none = When to descale next cannot be told: water and use were not read.
history-chart = { $reading }: over the years
