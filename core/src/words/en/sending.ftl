# The words of sending: the outbox, why it waits, joining an office, what the office says.

## Outbox

outbox-last-answer = The office last answered: { $clock }.
outbox-no-answer = The office has not answered yet since this program started.
outbox-last-safe = Last safe at the office: { $clock }.
outbox-never-safe = Nothing from here is safe at an office yet.
outbox-visit = { $site } · { $when }
outbox-line = { $what } · since { $since } · { $state }
outbox-events = Entries of the log: { $count }
outbox-photos = Photographs: { $count } ({ $size })
outbox-photo-arrived = photograph, { $arrived } of { $size }
outbox-seal = Seal of the record
outbox-sending = Being sent: { $what }
outbox-is-sent = being sent
outbox-waits = waits for coverage
outbox-waits-wifi = waits for Wi‑Fi
outbox-waits-answer = waits for the office to answer
outbox-waits-turn = next in turn
outbox-waits-stuck = waits for the entries of the log
outbox-waits-office = waits until this device has joined
outbox-aside = kept aside at the office for review
    .do = Another device goes on with this visit. The office has yours on its disk and looks at it. It stays here too.
outbox-stuck-why = stuck: { $why }
outbox-again-in = Tried again in { $left }.
outbox-no-network = No network. It goes out by itself when there is coverage.
outbox-wishes = Over which network
outbox-send-events = Entries of the log over Wi‑Fi only
outbox-send-previews = Small pictures over Wi‑Fi only
outbox-send-originals = Photographs over Wi‑Fi only
outbox-send-now = Send now
outbox-revoked = not let in: look here
outbox-revoked-notice = The office lets this device in no more
    .do = Everything is kept on this device. Nothing is sent. Ask the office for a code and join again.
outbox-nowhere = This device has not joined an office
    .do = Everything is kept on this device. Ask the office for a code and join.

## Why nothing goes out, and why something is stuck

hindered-no-answer = The office does not answer.
    .do = Look for better coverage; it may also be the office that is away. It goes on by itself.
hindered-not-the-office = Something else answers in place of the office.
    .do = A guest network often shows a page of its own first: open a browser and sign in there, or switch Wi‑Fi off.
hindered-busy = The office cannot take it just now.
    .do = It goes on by itself. If it lasts a day, call the office.
hindered-no-token = The office does not know this device.
    .do = Ask the office for a code and join again. Everything is kept here.
stuck-conflict = the office has other entries of this visit
    .do = Call the office: a person there must look at the visit. Both are kept. Then send again.
stuck-another-device = the office has this visit from another device
    .do = Call the office and ask which device goes on with the visit.
stuck-taken-over = another device goes on with this visit
    .do = Go on at the other device. What is here is kept. Call the office if that is not right.
stuck-too-large = it is larger than the office takes
    .do = Call the office. It is kept here; for a photograph take a smaller one too.
stuck-other-length = the office was told another size of this photograph
    .do = Send again. If it stays, call the office.
stuck-other-key = the office knows another key of this device
    .do = Ask the office for a code and join again. Then send again.
stuck-sealed-otherwise = the visit is sealed at the office with other content
    .do = Call the office: a person there must look at the visit. Yours is kept here.
stuck-no-addendum = something came after the seal that is no addendum
    .do = Call the office: a person there must look at the visit. Everything is kept here.
stuck-version = the office and this program do not understand each other
    .do = Update this program, or ask the office to update theirs. Then send again.
stuck-not-read = the office cannot read it
    .do = Update this program and send again. If it stays, call the office. It is kept here.
stuck-file-gone = the photograph's file is not on this device any more
    .do = Was it moved? Put it back, then send again. Otherwise add words to the record: which photograph is missing, and why.
stuck-refused = the office refuses it
    .do = Send again. If it stays, call the office. It is kept here.

## Joining an office

join-title = Join an office
join-how = Ask the office for a code. It is valid once, for ten minutes. Paste its whole link, or type code and address.
join-code-label = Link or code
join-office-label = The office's address, if you typed the code
join-name-label = Name of this device at the office
join-name-usual = Field device
join-key = This device tells the office its public key. The key that signs stays here.
join-do = Join
join-under-way = The office is being asked.
join-joined = Joined: { $office }
join-done = This device has joined { $office }
    .do = What waits goes out now.
join-mistyped-code = A code has eight letters and digits, as in 7K2M-9QXR.
join-mistyped-address = Write the whole address, as in https://office.example.
join-not-code = The office does not take this code
    .do = It was used, is older than ten minutes, or has a slip in it. Ask for a new one.
join-not-too-many = Too many wrong codes
    .do = Wait a minute, then type it again.
join-not-no-answer = The office does not answer
    .do = Look at the address and at the coverage. Then press Join again.
join-not-not-an-office = There is no office at this address
    .do = Look at the address. A guest network may want a sign-in first.
join-not-busy = The office cannot take it just now
    .do = Press Join again in a minute.

## What the office says

clock-behind = This device's clock is { $minutes } min behind the office's
clock-ahead = This device's clock is { $minutes } min ahead of the office's
clock-do = Set the device's clock. What is recorded keeps the time that it was recorded with; the office notes the difference.
review-accepted = Checked by the office, { $when }: { $words }
review-accepted-bare = Checked by the office, { $when }
review-question = The office asks: { $words }
review-question-bare = The office has a question about this visit. Call there.
review-other = The office says: { $words }
review-other-bare = The office looked at this visit, { $when }
procedures-of-office = the office
going-on-here = Go on here: { $site }
    .do = The office gives you this visit of another device. Look first what is connected, open and away from home.
going-on-open = Open the visit
