# Words of the office's own pages. Words of the trade come from the core and the packs.

office-office = Office
office-skip = Skip to the content
office-tools = Language and session
office-leave = Sign out
office-visits = Visits

## Signing in

office-sign-in = Sign in
    .do = Open the link that the office printed when it started. It works once. Run “coilside office --new-link” to print another.
office-link-used = This link does not work any more
    .do = A link works once, and for a week. Run “coilside office --new-link” to print another.
office-left = You are signed out
    .do = Run “coilside office --new-link” to print a new way in.
office-missing = There is no such page
    .do = Go back to the visits and look from there.
office-later = The office cannot show this just now
    .do = Nothing was lost. Try again in half a minute.
office-no-summary = There is no summary here
    .do = Check that the address is complete. If it is, call the firm that sent it.

## The list

office-found = { $n } in all
office-filters = Show
office-show-all = All
office-show-waiting = Photographs on the way
office-show-trouble = Needs a look
office-state-in-work = In work
office-state-unsigned = Waits for the signature
office-state-complete = Complete
office-state-incomplete = Incomplete
office-state-broken-off = Broken off
office-search = Search
office-search-hint = Site, address, unit, serial number or technician
office-search-do = Search
office-search-clear = Clear
office-column-date = Date
office-column-site = Site and unit
office-column-technician = Technician
office-column-state = State
office-column-missing = Missing
office-column-photographs = Photographs
office-no-site = Site not known
office-look = Needs a look
office-photos-of = { $here } of { $all }
office-pages = Pages
office-page-before = Before
office-page-next = Next
office-page-of = Page { $page } of { $pages }
office-none = Nothing fits
    .do = Search for less, or show all visits.
office-none-yet = No visits yet
    .do = They appear here as soon as a device sends its first event.

## One visit

office-day-label = Day
office-time = Time
office-address = Address
office-owner = Owner
office-reason = Reason
office-check = The record
office-chain-holds = Chain verified
    .text = Events: { $n }. Each follows the one before it.
office-chain-breaks = The chain breaks at event { $at }
    .text = From event { $at } on nothing can be vouched for. { $why }
office-seal-none = Not sealed
    .text = The work goes on, or the seal is still on its way.
office-seal-awaited = The record is frozen. The device has not sent its signature yet.
office-seal-holds = Seal verified
    .text = Signed by the device of { $name }, key { $key }. Received { $when }.
office-seal-fails = The seal does not hold
    .text = Do not rely on this record: { $why }.
office-seal-later = Events after the seal
    .text = { $n } came after the seal and are not under it.
office-photos-here = Photographs are here
office-photos-waiting = Photographs are on the way
office-branches = Contradicting events are kept
    .text = { $n } differ from the chain. Ask the technician which are right. Nothing was dropped.
office-pack-pinned = Procedure
    .text = { $pack } { $version }, the very one that was used.
office-pack-other = Another version of the procedure
    .text = The visit used another version of { $pack } than { $version }. What is missing may differ.
office-pack-none = The procedure is not known here
    .text = This office has no words for { $pack }. The record is shown as it was written.
office-summary = The owner's summary
office-summary-open = Open the summary
office-summary-hint = Send its address to the owner. It opens without a sign-in, and shows no address, no place and no original photographs.
office-summary-none = It is made as soon as the seal has come.
office-missing-title = What is missing, and why
office-missing-later = The visit is not sealed yet. What is missing shows at the seal.
office-missing-so-far = Not there yet
office-because = Reason: { $reason }
office-no-reason = No reason was given.
office-gap-step-open = Not done: { $name }
office-gap-step-skipped = Left out: { $name }
office-gap-shot = No photograph: { $name }
office-gap-reading = No reading: { $name }
office-gap-setting = Setting left away: { $name }
office-findings = Findings
office-finding-since = open since { $date }
office-happened = Happened against a refusal
office-settings = Settings changed for the work
office-setting = Setting
office-setting-home = As it was
office-setting-away = For the work
office-setting-now = Now
office-setting-open = Still away
office-setting-back = Back
office-setting-left = Left away
office-setting-differs = Back, reads otherwise
office-work = The work in order ({ $n })
office-mark-running = Running
office-mark-done = Done
office-mark-late = Later than the most
office-mark-skipped = Left out

## Photographs

office-before-after = Before and after
office-before = Before
office-after = After
office-no-photo = No photograph
office-photo-waits = On the way from the device
office-photo-ahead = Small picture, sent ahead. The photograph itself is on the way.
office-other-photos = Other photographs
office-unplaced = Not placed
office-original = Original
office-from-site = { $distance } from the site (± { $doubt } m)
office-no-place = place not known
office-camera-time = The camera says { $time }.

## Readings

office-readings = Readings
office-other-readings = Other readings
office-reading = Reading
office-value = Value
office-change = Change
office-instrument = Instrument
office-unusual = unusual, confirmed
office-corrected = taken { $n } times
office-calibration-lapsed = calibration ended on { $until }

## The owner's summary

office-summary-pdf = Summary as a PDF, to print
office-summary-keep = The page as a file, to keep

## Mixes and notes

office-mixes = Mixes
office-mix = Mix
office-water = Water
office-concentrate = Concentrate
office-note = Note

## The day and what was used

office-calendar = Due days for a calendar
office-calendar-due = Service due: { $site }, unit { $unit }
office-calendar-cover = Cover ends: { $site }, unit { $unit }
office-round = The day
office-round-nobody = Who does it is not known here
office-round-days = Days
office-round-day-before = ← The day before
office-round-day-after = The day after →
office-used-csv = Download as CSV
office-used-of-days = What visits used
office-used-from = From
office-used-to = To
office-record-file = Record as a file
    .hint = Everything of this visit in one ZIP, with a README that tells how to verify it without this office. Its photographs may tell the exact place.

office-customer-waits = Name and signature are on the way
office-customer-altered = The file with the customer's name and signature is not the one that the record names, or cannot be read. Do not rely on it.
office-customer-matches = The file is the one that the sealed record names.
office-customer-erase = Erase name and signature
    .hint = They go from this office for good, and stand in no record or summary that is made from now on. The sealed record holds without them and says that they are withheld. Files that were handed out before are not reached.
## Devices

office-ways = Pages of the office
office-devices = Devices
office-device = Device
office-devices-none = No devices yet
    .do = Let a device join. Then its visits appear here.
office-device-itself = Calls itself
office-device-joined = Joined
office-device-heard = Last heard
office-device-never = Not yet
office-device-clock = Its clock
office-device-coming = On its way
office-device-nothing-coming = Nothing that is known
office-device-photos-coming = Photographs: { $n }
office-device-revoked = Revoked
    .hint = It can join again with a new code.
office-device-no-key = No key yet
office-just-now = Just now
office-minutes-ago = { $n } min ago
office-hours-ago = { $n } h ago
office-days-ago = { $n } days ago
office-clock-unknown = Not known
office-clock-right = Right
office-clock-behind = { $time } behind
office-clock-ahead = { $time } ahead
office-seconds = { $s } s
office-minutes-seconds = { $large } min { $small } s
office-hours-minutes = { $large } h { $small } min
office-days-hours = { $large } d { $small } h
office-clock-was-off = The device's clock was wrong
office-clock-was-behind = By { $time } behind. Times by the office's clock stand beside the recorded ones.
office-clock-was-ahead = By { $time } ahead. Times by the office's clock stand beside the recorded ones.
office-time-right = (office { $time })
office-join = Let a device join
office-join-whose = Whose device is it?
office-join-name = A name is missing
    .do = Go back and write whose device it is, in up to 80 characters.
office-join-title = A device for { $name }
office-join-scan = On the device: open Coilside, choose to join an office, and scan this.
office-join-qr = Code to scan: the link that stands beside it
office-join-type = Or type the code
office-join-at = or the whole link
office-join-minutes = minutes left, of ten
office-join-once = The code works once. It is shown only here: to see another one, let a device join again.
office-join-open = Open this in Coilside
    .do = On the device: open Coilside, choose to join an office, and scan the code again or type it. A browser cannot do it.
office-revoke = Revoke
office-revoke-title = Revoke the device of { $name }?
office-revoke-means = The office will take nothing more from it, and tell it nothing more.
office-revoke-keeps = Nothing is lost: what came stays here, what has not come stays on the device. It can join again with a new code.
office-leave-as-it-is = Leave it as it is

## Looking at a visit

office-review = Checked at the office
office-review-none = Nobody has said anything about it yet.
office-review-accept = Mark as checked
office-review-accepted = Checked
office-review-question = Asked
office-review-ask = Ask the technician
office-review-send = Send the question
office-review-hint = It goes down to the device that sent the visit.
office-review-words = The question has no words, or too many
    .do = Go back and write it in up to 2000 characters.
office-take-over = Let another device go on with this visit
office-take-over-back = The visit
office-take-over-now = The device of { $name } writes this visit now.
office-take-over-means = From now on the other device writes it: it gets everything that has come here, and goes on from there.
office-take-over-keeps = What the first device still has of it is not lost. When it comes, it is kept beside the record, to be looked at.
office-take-over-who = Which device goes on?
office-take-over-do = Let it go on
office-take-over-nobody = No other device can: one must join first.
office-take-over-sealed = The visit is sealed
    .do = Nobody goes on with a sealed visit. Plan another one.
office-handed = from { $from } to { $to }
office-beside = Kept beside the record
office-beside-why = These events are not part of the record. Compare them with it, and ask the technician which are right.
office-beside-from = From the device of { $name } ({ $n })
office-beside-number = Number
office-beside-what = What it says
office-beside-sealed = The device of { $name } sealed its own account, over { $n } events. That seal is kept too.
