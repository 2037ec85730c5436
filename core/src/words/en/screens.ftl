# The words of the screens. Short sentences, in the imperative, never blaming.

## Menu and frame

menu-round = Round
menu-now = Now
menu-phases = Phases
menu-photographs = Photographs
menu-readings = Readings
menu-findings = Findings
menu-leaving = Leaving
menu-emergency = Emergency
menu-break-off = Break off
menu-outbox = Outbox
menu-procedures = Procedures
menu-settings = Settings
menu-unit = Unit { $letter }
back = Back
back-to-now = Back to the work
back-to-round = Back to the round
progress = { $done } of { $total }
not-yet = not yet
fact-not-known = not known: look again

## Round

round-under-way = Under way
round-due = Due
round-done = Sealed
round-nothing-due = Nothing is due. New visits come from the office when there is coverage.
round-go-on = Go on: { $site }
round-start = Start the visit: { $site }
round-owner = { $name } · { $phone }
round-unit = Unit { $letter }: { $maker } { $model }, serial { $serial }
round-due-on = Due { $day } · { $reason }
round-line-safe = { $site } · { $when } · at the office
round-line-waiting = { $site } · { $when } · waiting to be sent
round-line-elsewhere = { $site } · { $when } · another device goes on
round-coming = A visit of another device is coming: { $have } of { $next } entries are here.
round-coming-procedure = A visit of another device is here and waits for its procedure or its assignment from the office.

## Outbox

outbox-label = Outbox
outbox-empty = all at the office
outbox-waiting = waiting
outbox-waiting-photos = photographs waiting: { $photos }
outbox-stuck = stuck: look here
outbox-all-safe = Everything is safe at the office.
outbox-much = Waiting since { $since }: { $what }
outbox-kept = They are kept on this device and go out by themselves when there is coverage.

## Procedures

procedures-kept = A visit that has begun keeps the procedure that it began with.
procedures-in-use = Procedures in use
procedures-column-name = Name
procedures-column-version = Version
procedures-column-from = From
procedures-built-in = this program
procedures-from = Read from { $from }
procedures-refused = Refused
procedures-more = And { $count } more.
procedures-read = Read again
procedures-were-read = Read. In use: { $good }. Refused: { $refused }.
procedures-no-folder = This program was started without a folder of procedures.
procedures-not-here = The procedure “{ $pack }” is not on this device.
    .do = Put it into the folder of procedures, or ask the office for a program that has it. The visit then begins.

## Settings

settings-language = Language
settings-units = Units
language-en = English
language-es = Español
units-metric = Metric: °C, L, kPa
units-us = US customary: °F, gal, psi

## Now

now-all-done = All steps are behind you
now-all-done-text = Look over what is open, then seal the record.
now-to-leaving = Go to leaving
undo = Take back: { $step }
foot-start = Start: { $step }
foot-done = Done: { $step }
foot-skip = Leave this step out
check-done = Done
state-open = to do
state-gated = not yet
state-running = under way
state-done = done at { $clock }
state-done-late = done at { $clock }, past the longest time
state-happened = happened at { $clock }: { $words }
state-skipped = left out: { $reason }

## Waiting times

dwell-waiting = Wait at least { $least }, at most { $most }.
dwell-running = { $left } to go
dwell-ready = Time is up. Go on.
dwell-soon-over = Go on now: { $left } until the longest time.
dwell-over = Past the longest time. Go on at once.
wake-ready = Time is up: { $step }
wake-soon-over = Two minutes left: { $step }

## Fields

could-not-measure = Could not measure
confirm-unusual = Yes, it is so
before-value = Last time { $value } ({ $date })
taken-value = Recorded: { $value }
missed-value = Not taken: { $reason }
instrument-lapsed = { $name } ({ $serial }): its calibration ended on { $until }. You can go on measuring with it; the record says so.
problem-empty = Type a number.
problem-not-a-number = “{ $typed }” is not a number. Use digits, with a comma or a point.
problem-ambiguous = “{ $typed }” can mean two numbers. Write it without the separator.
problem-impossible = That cannot be. Write a value from { $least } to { $most }.
problem-words = Write a few words.
problem-ink-unreadable = The drawing cannot be read. Clear it and draw it again.
problem-ink-nothing = Nothing is drawn yet. Draw, or go on without.
problem-ink-outside = The drawing does not fit its box. Clear it and draw it again.
problem-ink-too-much = That is too much to draw. Clear it and draw less.
problem-ink-name = The name is too long. Write at most 120 letters.
problem-read-back = It shows { $shows }; before the work it was { $home }. Set it back and read again, or say below why it is right so. Must it stay away: say that instead.
problem-choose = Choose one.
confirm-other-unit = Keep it: it is this unit
question-other-unit = The plate says { $read }, the register { $register }. Is it the right unit? If not, do not begin: ask the office.
question-from-photo = Read from the photograph: { $read }. Compare it with the plate.
confirm-from-photo = Take it: it is what the plate says
question-unusual = Mostly it lies between { $from } and { $to }. Is it so?

## Photographs

shot-take = Take the photograph
shot-take-another = Take another
shot-could-not = Could not photograph
shot-unplaced = Anything else
    .show = Anything worth keeping. The office can place it later.
photo-caption = { $title }, { $when }
photo-code-read = Code read: { $text } ({ $kind })
photo-refused = This file was not taken. It is kept aside.
photo-empty = The file is empty. Take the photograph again.
photo-too-long = The file is larger than 60 MB. Choose a smaller setting and take it again.
photo-too-large = The picture has more than 100 megapixels. Choose a smaller setting and take it again.
photo-not-a-picture = The file is not a picture. Choose a JPEG, PNG or WebP photograph.
photo-damaged = The picture breaks off or is damaged. Take it again.
photo-after-seal = The record is sealed. The photograph is kept and sent beside it.
flag-time-differs = The camera's clock differs from this device's by more than ten minutes.
flag-no-time = The picture carries no time of its own.
flag-place-differs = The camera's place differs from this device's.
flag-same-as-other = The same picture stands in another place of this visit.
flag-no-preview = Kept as it is. Not every device can show it.
flag-blurred = Blurred, or nothing clear to see in it. Take another if you can.
flag-dark = Too dark. Take another with more light if you can.
flag-blown-out = Much of it is burnt out. Take another against less light if you can.
flag-same-as-before = Shows the same as the photograph before the work.
flag-looks-like-other = Looks the same as another photograph of this visit.
flag-clock-set-back = This device's clock went back during the visit.
flag-no-place = Neither the camera nor this device told where it was taken.
flag-elsewhere = Taken elsewhere: { $apart } from the site, give or take { $doubt }.
flag-place-unsure = Too close to call whether it was taken at the site: { $apart } away, give or take { $doubt }.
flag-other-serial = The code on it gives another serial number than the register. Check which unit it is.
note-photo = { $title }: { $flag }

## Refusals

refused-step = Not yet: { $step }
refused-sealed = The record is sealed
    .do = Only an addendum can follow.
refused-elsewhere = Another device goes on with this visit
    .do = Go on at the other device. What is here is kept. Call the office if that is not right.
refused-sealing = The record is being sealed
    .do = Cancel the seal to go on working.
refused-broken-off = The visit was broken off
    .do = Seal what is there.
refused-no-such = That is not possible here
    .do = Go back to the work and go on from there.
refused-settings-away = Not sealed: a setting is away from home
refused-signature-waits = Not sealed: the customer's name or signature is not taken yet
    .do = Take it, clear it, or say that the customer does not sign.
refused-setting = Bring home: { $setting }. Or say why it stays away.
refused-seal-danger = Not sealed: it is not safe to leave like this
happened-offer = It already happened
missing-already-done = It is already done.
missing-not-for-this-unit = It does not concern this unit.
missing-answer = Answer first: { $question }
missing-phase = Finish first: { $phase }
missing-step = Do first: { $step }
missing-reading = Read: { $reading }
missing-shot = Photograph: { $shot }
missing-loop-not-cold = The loop is not measured at 30 °C or below. Let it cool and measure again.
missing-fitting-not-cold = The fitting is not measured at 30 °C or below. Let it cool and measure again.
missing-rinse-not-measured = Measure rinse and supply with the same instrument, pH or conductivity.
missing-rinse-differs = The rinse does not equal the supply yet. Rinse on and measure again.
missing-not-started = Start the waiting time first.
missing-wait = Wait { $left } more.
missing-setting-not-noted = Note how it was, and how it is now: { $setting }
missing-setting-away = Bring home: { $setting }
missing-other-unit = Unit { $letter }, which shares this with it: { $danger }
missing-acid-unknown = It is not known which acid this is, or which metal it meets. Read the label and the exchanger's plate. Until both are known, flush with water only.
pause-title = You were away for a while
pause-text = Someone may have been here. Look at each again before you go on.
pause-still = { $fact }: still { $state }
shared-title = Work on another unit changed what this one shares
shared-text = Look at each again before you go on here.
shared-elsewhere = Unit { $letter } shares what changed here. Look there again:
strip-other-unit = Unit { $letter }: { $what }

## Settings of the controller

excursion-home-label = { $setting }: as it was, with its unit
excursion-away-label = { $setting }: as it is for the work, with its unit
excursion-because-label = { $setting }: why, if not as always
excursion-open = Note the change
excursion-noted = { $setting }: { $home } → { $away }
excursion-bring-home = { $setting }: bring it back to { $home }.
excursion-back-label = What the controller shows now
excursion-differs-label = It shows something else than before: why is that right?
excursion-is-home = It is back
excursion-leave = It must stay away
excursion-home-now = { $setting }: back, shows { $shows }
excursion-home-differs = { $setting }: was { $home }, now shows { $shows }. Reason: { $reason }
excursion-left = { $setting } stays away: { $reason }
excursion-away = { $away }, bring back to { $home }

## Screens that ask

ask-why = Why could it not be had?
    .how = Say it in a few words. They stand in the record.
    .label = Reason
    .do = Record the reason
ask-skip = Leave this step out?
    .how = Say why. The step counts as missing, with your reason.
    .label = Reason
    .do = Leave it out
ask-happened = It already happened
    .how = Record what is true. It is marked in the record, and the next screen says how to make it safe.
    .label = What happened
    .do = Hold to record that it happened
ask-left = The setting stays away
    .how = Say why, and tell the owner. It stands in the owner's summary.
    .label = Reason
    .do = Record that it stays away
ask-break-off = Break off here
    .how = Make it safe first, photograph how you leave it, and hang the tag. What is there is sealed as incomplete.
    .label = Reason
    .do = Hold to break off
make-safe-acid = Drain the acid, neutralise it, rinse. Leave the valves shut until the rinse is proved. If you cannot stay: shut, tag, warn the owner and call the office.
make-safe-pump = Stop the service pump and unplug it.
make-safe-covers = Put the covers on, or fence the unit off.
make-safe-tag = Leave the isolator locked and tagged.
make-safe-settings = Put the settings back, or write on the tag which are away.
make-safe-owner = Tell the owner how you leave it, and whom to call.

## Readings and results

readings-before-after = As found and as left
readings-others = Other readings
column-reading = Reading
column-found = As found
column-left = As left
column-value = Value
column-what = What
column-is = Is

result-title = What the readings come to
result-not-yet = Take the readings of water, flow and power first. Then it stands here what they come to.
result-value = { $value }{"\u00A0"}±{"\u00A0"}{ $doubt }
result-staged = { $stage }: { $value }
result-last-found = Last time, as found: { $value } ({ $date })
result-last-left = Last time, as left: { $value } ({ $date })
result-before-after = Before and after
result-doubt = ± is the doubt of the instruments, at a level of about 95 %.
result-to-details = Details
result-to-all = See all results
result-notice-found = How you found it
result-notice-left = How you leave it
result-line = { $name }: { $value }. { $more }

result-heat = Heat to the water
    .alone = Compare it with the nameplate at like air and water. Far below: look at coil, fan, flow and scale.
    .more = More heat than before at like air and water, by more than the doubt.
    .less = Less heat than before at like air and water, by more than the doubt. Look again before you leave.
    .apart = Air or water was too different before, or was not read: before and after cannot be compared.
    .none = No difference in heat that can be told at like air and water.
result-cop = Coefficient of performance
    .alone = Heat for each watt taken. Lower than last time at like air and water: clean it, and look for the cause.
    .more = More heat for each watt than before at like air and water, by more than the doubt.
    .less = Less heat for each watt than before at like air and water, by more than the doubt. Look again before you leave.
    .apart = Air or water was too different before, or was not read: before and after cannot be compared.
    .none = No difference in the heat for each watt that can be told at like air and water.
result-water-rise = Temperature rise of the water
    .alone = Much rise with little flow: look for scale, air or a half-shut valve. Little rise with good flow: look at the air side.
    .more = The water warms more on its way through than before.
    .less = The water warms less on its way through than before. With more flow that is no loss: go by the heat.
    .none = No difference in the rise that can be told.
result-air-drop = Temperature drop of the air
    .alone = A large drop with a weak air stream: look for dirt on the coil and at the fan. A small drop: little heat is taken.
    .more = The air cools more than before. With the same air stream the coil takes more heat.
    .less = The air cools less than before. More air through a clean coil does that too: go by the heat.
    .none = No difference in the drop that can be told.
result-superheat = Superheat of the suction gas
    .alone = Usual is about 5 to 10 K. Much: little refrigerant, or a valve that feeds too little. Near zero: liquid may reach the compressor. The maker's figures come first.
    .more = More superheat than before. The maker's figures come first.
    .less = Less superheat than before. A cleaner coil can do that. The maker's figures come first.
    .none = No difference in the superheat that can be told. The maker's figures come first.
result-subcooling = Subcooling of the liquid
    .alone = Usual is about 3 to 8 K. Little: little refrigerant. Much: too much, or liquid held back. The maker's figures come first.
    .more = More subcooling than before. The maker's figures come first.
    .less = Less subcooling than before. The maker's figures come first.
    .none = No difference in the subcooling that can be told. The maker's figures come first.
result-gas-cooler-pressure = Pressure in the gas cooler, absolute
    .alone = Above critical nothing condenses, so there is no subcooling. The controller sets this pressure. The maker's figures come first.
    .more = More pressure than before. It follows the water and the controller. The maker's figures come first.
    .less = Less pressure than before. It follows the water and the controller. The maker's figures come first.
    .none = No difference in the pressure that can be told.
result-gas-cooler-approach = Approach of the gas cooler
    .alone = How much warmer the gas leaves than the water enters. Much: look for scale and little flow. The maker's figures come first.
    .more = The gas leaves warmer above the water than before: look for scale and little flow.
    .less = The gas leaves closer to the water than before, as after descaling.
    .none = No difference in the approach that can be told.
result-cycle = The refrigerant cycle
result-cycle-caption = { $refrigerant }: pressure over enthalpy
result-cycle-dome = Where liquid and vapour stand together
result-cycle-enthalpy = Enthalpy, { $unit }
result-cycle-pressure = Absolute pressure, { $unit }
result-cycle-stage = { $stage }: low side { $low }, high side { $high }, superheat { $superheat }, subcooling { $subcooling }.
result-cycle-cop = Of the refrigerant alone the sketch gives a COP of about { $cop }, without fan, pump and losses.
result-cycle-means = A sketch from the readings: pressure losses are left out, pressures are absolute. The maker's figures come first. Only the certified person opens the circuit.
result-insulation = Insulation to earth, as measured
    .pass = Above the least of { $beside }. The maker's figure comes first.
    .fail = Below the least of { $beside }. Refrigerant in the oil can do that. The licensed person decides before power comes on.
    .close = Too close to the least of { $beside } to call. Measure again. The maker's figure comes first.
result-insulation-40 = Insulation to earth, at 40 °C
    .alone = For comparing year by year, by the rule of half for each 10 K. One that keeps falling tells of damp or age.
result-capacitor = Run capacitor
    .pass = Within 10 % of its label, { $beside }.
    .fail = More than 10 % off its label, { $beside }. Note it as a finding; a new one has the same label.
    .close = Too close to 10 % off its label, { $beside }, to call. Measure again.
result-scaling = Scaling index of the supply water (Langelier)
    .pass = Below zero: this water leaves little scale. It may attack metal over the years.
    .fail = Above zero: this water leaves scale where it is heated. Plan to descale more often.
    .close = About zero: it can go either way. Go by the scale that you find.

result-year = Electricity for hot water in a year
    .less = As found { $found }, as left { $left }: { $saved } less. By the use that the owner told, as if every day were like today.
    .more = As found { $found }, as left { $left }: { $saved } more. By the use that the owner told, as if every day were like today.
descale-title = When to descale next: advice
descale-advice = In about { $months } months. The doubt reaches from { $least } to { $most }.
descale-water-scales = Reckoned as water that leaves scale where it is heated.
descale-water-does-not-scale = Reckoned as water that leaves no scale where it is heated.
descale-held-at-shortest = The water asks for less than that. Treat the water, or heat it less.
descale-held-at-longest = Do not wait longer: water and use change.
descale-first = The maker's interval and terms come first.

## Details of results

details-title = Details
details-back = Back to the results
details-results = Results
details-readings = Readings that they rest on
details-result = Result
details-difference = Difference
details-verdict = Verdict
details-instrument = Instrument
details-limits = Limits
details-doubt = ±: expanded uncertainty, k = 2, after JCGM 100. The instruments' limits count as rectangular.
details-shared = One instrument in one place shares most of its error between before and after (correlation 0.8; common practice, no source). Between two places nothing is taken to be shared.
details-conditions = Differences of heat and of the coefficient of performance: as found, brought to the air and water as left by a model, with its doubt; as for a compressor at one speed, the humidity taken as 60 ± 30 % both times.
details-rules = Verdicts after JCGM 106: passed or failed only where the whole doubt lies on one side of the limit. A change only where it is larger than its doubt.
verdict-pass = passed
verdict-fail = failed
verdict-close = too close to call
verdict-more = more
verdict-less = less
verdict-none = no difference that can be told

## Findings

severity-note = Worth knowing
severity-soon = Mend soon
severity-unsafe = Unsafe
severity-label = How much does it matter?
finding-new = A new finding
finding-label = What did you find?
finding-add = Add the finding
finding-mended-label = Mended? What was done
finding-mend = It is mended
finding-since = { $text } (open since { $date })
finding-mended = Mended: { $words }

## Leaving

leaving-state = How you leave the unit: compare with what you see
leaving-missing = Missing in the record
leaving-complete = Nothing is missing.
leaving-notes = Notes in the record
leaving-mend = Go there
leaving-broken-off = Broken off: { $reason }
gap-because = { $gap } Reason: { $reason }
gap-step-open = Not done: { $step }
gap-step-skipped = Left out: { $step }.
note-lapsed = Measured with { $name } ({ $serial }): its calibration ended on { $until }.
note-mix = { $mix }: { $note }
seal-hold = Hold to seal the record
sealing-text = The record is frozen and waits for the signature of this device.
sealing-again = Sign now
sealing-cancel = Go on working
sealed-title = The record is sealed
sealed-text = Any change to it from now on would show.
sealed-safe = All of it is safe at the office.
sealed-waiting = It is kept on this device and goes to the office by itself when there is coverage.
sealed-complete = It is complete.
sealed-incomplete = It says what is missing, and why.
customer-title = The customer
customer-question = Is the customer there?
customer-present = The customer is there
customer-absent = The customer is not there
customer-absent-text = That stands in the record as it is. Nothing is missing because of it.
customer-show = Show or read this to the customer.
customer-shown-first = Before all else
customer-shown-found = What was found
customer-shown-done = What was done
customer-shown-gaps = What was not done
customer-statement = The signature says one thing: “I was shown this on the spot.” It is no contract and gives up no right. Nobody must sign.
customer-name = Name of the customer, if they like
customer-ink = Signature, if they like
    .hint = Draw with a finger, a pen or the mouse. The typed name alone is as good.
customer-sign = Take this signature
customer-sign-name = Take the typed name alone
customer-unsigned = The customer does not sign
customer-unsigned-text = The customer is there and does not sign. Nobody must, and no reason is asked.
customer-sign-after-all = The customer signs after all
customer-signed = Shown to { $name }, signed on the spot at { $clock }
customer-signed-unnamed = Shown to the customer, signed on the spot at { $clock }
customer-withheld = The customer's name and signature were erased. The record holds without them.
addenda-title = Addenda
addendum-line = { $clock } { $text }
addendum-unsigned = The addendum waits for the signature of this device.
addendum-field = What is to be added
addendum-add = Add and sign

## Emergency

emergency-call = Call the emergency number
emergency-here = Read this aloud:
emergency-place = Latitude { $latitude }, longitude { $longitude }, within { $accuracy } m.
emergency-no-place = The place is not known. Give the address.
emergency-eye = Acid or cleaner in the eye
    .do = Rinse at once with clean water, eyelids held open, for at least 15 minutes. Take lenses out. Go on rinsing on the way to the doctor. Take the label along.
emergency-shock = Electric shock
    .do = Switch off at the isolator before you touch the person. Call for help. If there is no breathing, begin resuscitation. See a doctor after any shock.
emergency-gas = Smell or alarm of gas
    .do = No flame, no switch, no phone in the zone. Get everyone out and upwind. Air the place if that is safe. Call from outside.
emergency-burn = Burn or scald, acid on the skin
    .do = Cool a burn with running water for 20 minutes. Rinse acid off with plenty of water and take wet clothes off. Call for help.
emergency-acid-in-loop = There is acid in the loop. Say so to whoever comes.
emergency-clock = It is { $clock }.

## Owner's summary

summary-title = Your hot-water heat pump was serviced
summary-title-stopped = The work on your hot-water heat pump was stopped
summary-lead = { $site }, { $day }
summary-machine = Machine: { $unit }
summary-before = Before
summary-after = After
summary-no-photo = No photograph
summary-slide = Tap a box, or use the arrow keys, to see less or more of each picture.
summary-page = Page { $page } of { $pages }
summary-section-first = Read this first
summary-section-found = What we found
summary-section-done = What we did, and why it matters
summary-section-pictures = Before and after
summary-section-numbers = What changed in numbers
summary-section-years = Over the years
summary-section-gaps = What we could not do
summary-section-settings = Settings that differ for now
summary-section-cover = Terms of cover
summary-section-cautions = Please mind
summary-section-next = What comes next
summary-section-shown = Shown on the spot
summary-section-genuine = How to check that this is genuine
summary-stopped = We had to stop before the work was done. Reason: { $reason } The unit must stay off until we have been there again.
summary-incomplete = Not all was done.
summary-evidence-missing = Photographs or readings that are missing in the record: { $n }. Each is noted there with its reason.
summary-is-it-safe = Is it safe?
summary-is-there-hot-water = Is there hot water?
summary-whom-to-call = Whom do I call?
summary-next-date = When is the next service?
summary-no-contact = The firm that sent your technician
summary-next-by-phone = We call you to agree on a day.
summary-safe-yes = Yes. Nothing unsafe was found.
summary-safe-no = No. Do not use the unit. What was found stands at the top.
summary-safe-stopped = The work was stopped. Leave the unit switched off until we come back.
summary-safe-stopped-dangerous = No. The work was stopped and the unit could not be left safe. Keep away from it. Switch nothing on. Take no water from it until we have been there.
summary-safe-yes-mended = Yes. What was unsafe is mended. Read what was found, below.
summary-safe-stopped-untagged = The work was stopped. Nobody may switch the unit on until we have been there. It is off, and no lock hangs on it.
summary-hot-yes = Yes.
summary-hot-pending = It is heating up again. Run the hot water only when the unit has reached its temperature.
summary-hot-no = Not from this unit at the moment.
summary-not-measured = Not measured
summary-no-difference = No difference that can be told
summary-higher = Higher
summary-lower = Lower
summary-better = Better
summary-worse = Worse
summary-not-alike = Air or water was too different to compare the two.
summary-numbers-hint = The sign ± says how far off a number can be. A change that is smaller than that cannot be told.
summary-times = { $n } times
summary-chart-ranges = { $label }. Before: { $found }. After: { $left }. { $meaning }
summary-heat = Heat that the water gets
summary-cop = Heat for each unit of power used
summary-gain-less-power = The heat pump now needs less electricity for the same hot water.
summary-gain-year = By the hot water that you use, that is some { $least } to { $most } kWh of electricity less in a year.
summary-gain-year-up-to = By the hot water that you use, that is up to { $most } kWh of electricity less in a year.
summary-gain-more-power = The heat pump needs more electricity for the same hot water than before our work. Call us: we want to find out why.
summary-gain-conditions = Air or water was too different before and after. So it cannot be told whether the heat pump needs less electricity now.
summary-gain-none = In the electricity for the same hot water there is no difference that can be told.
summary-years-rises = It has gone up over the years.
summary-years-falls = It has gone down over the years.
summary-years-none = It has stayed about the same over the years.
summary-years-few = These are too few years to tell where it goes.
summary-left-out = Not done: { $step }. Reason: { $reason }
summary-not-done = Not done: { $step }.
summary-mended = { $finding } Mended: { $words }
summary-setting-left = { $setting } stays at { $away } for now (it was { $home }). Reason: { $reason }
summary-setting-open = { $setting } was left at { $away } (it was { $home }). We will put it back.
summary-caution-scald = Hot water can scald. Try it with your hand before you let children or old people in.
summary-caution-legionella = In lukewarm water germs can grow (legionella). Do not turn the hot water down below what was set. After days away, let each tap run hot for some minutes with the window open, and do not breathe in the spray.
summary-caution-flushed = The cleaner was rinsed out of the water side. We measured that it was gone before drinking water was let in again.
summary-caution-first = The label on the unit, its maker's book and the licensed person come first.
summary-next-service = Next service: { $day }.
summary-next-descaling = By your water, the scale in the unit should be cleaned out again in about { $months } months. What the maker asks for comes first.
summary-next-between = Until then keep leaves and snow away from the unit. Call us if it is loud, drips or the water stays cold.
summary-calendar = Put the day into my calendar
summary-calendar-title = Service of the hot-water heat pump
summary-mark-record = Mark of the record
summary-mark-key = Mark of the device that sealed it
summary-genuine = This is a short form of a record that was sealed. Call the firm and have both marks read to you. They must be the same as here.
summary-genuine-file = You can also ask for the record file. It holds all photographs and says how anyone can check that nothing in it was changed.
summary-genuine-page = The firm's own copy of this page stands here:
summary-shown = Shown to: { $name }, signed on the spot.
summary-shown-unnamed = Shown to the customer, signed on the spot.
summary-shown-drawing = Signature of { $name }, drawn by hand
summary-shown-drawing-unnamed = Signature, drawn by hand
summary-hand-over = Summary for the owner
summary-hand-over-page = Show the summary
summary-hand-over-paper = Summary as a PDF
summary-day = { $day } { $month } { $year }
summary-month-of-year = { $month } { $year }
summary-month-1 = January
summary-month-2 = February
summary-month-3 = March
summary-month-4 = April
summary-month-5 = May
summary-month-6 = June
summary-month-7 = July
summary-month-8 = August
summary-month-9 = September
summary-month-10 = October
summary-month-11 = November
summary-month-12 = December

## Mixes and materials

mix-said-parts = parts
mix-said-percent = percentage
mix-said-dose = dose to a litre
mix-said-cups = cups to the bucket
mix-label-contradicts = The label contradicts itself: by its { $by } it takes { $amount }, by its { $other } { $asks }. Do not guess: ask its maker, and until then take the weaker one.
mix-less-than-loop = That is less than fills the loop ({ $loop }): the pump would draw air.
mix-more-than-vessel = That is more than the vessel holds ({ $vessel }). Take a larger one, or mix in parts.
acid-allowed = { $acid } on { $metal }: allowed. { $reason } The label and the exchanger's maker come first.
acid-with-limits = { $acid } on { $metal }: with limits. { $reason } The label and the exchanger's maker come first.
acid-forbidden = { $acid } on { $metal }: forbidden. { $reason } Flush with water only, or take another acid by label and maker.
acid-reason-leaves-alone = Diluted and cold it leaves the metal alone.
acid-reason-chloride-pits = Its chloride pits and cracks stainless steel.
acid-reason-dissolves = The metal dissolves in it.
acid-reason-eats-joints = It eats the soldered joints.
acid-reason-inhibited = Only with an inhibitor that its label names.
acid-reason-weak-and-short = Only weak, cold and short.

charge-low = The phone's battery is at { $percent } %. Charge it before the acid goes in. If it goes dark the alarm cannot call you.
charge-low-times = The phone's battery is at { $percent } %. Charge it first. If you start now, write on the bucket: not out before { $least }, out at { $most } at the latest.

## What a drawing shows

view-plate = All four corners of the plate are in the picture, and the serial number can be read.
view-face = The whole face from straight in front, edge to edge, without glare.
view-wiring = The open lid with every terminal, sharp enough to follow each wire.
view-display = The display fills the picture, and its figures can be read.
view-whole = The whole unit from the front, with some of what stands around it.
view-feet = Both feet with bolts and pads, and the ground under them.
view-surface = The spot from near and sharp, with a rule beside it.
view-hoses = Both ports, both hoses and the vessel in one picture.
view-strip = The strip beside its scale, in daylight, before it dries.
view-lock = The isolator locked, the tag with its name and time to be read.
view-part = The whole part on a plain ground, worn side up.
