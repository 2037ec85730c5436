# The record file: what verifying it says, and the README inside it.

record-visit = Visit { $visit }: { $events } events, { $photographs } photographs; written last with the device key { $key }.
record-zip = Every byte of the file is accounted for: it is one ZIP, and nothing lies beside or between its files.
record-chain = Each event follows the one before it.
record-files = Every photograph, every procedure and every other file is what it was.
record-seal = The seal holds: the device's key signed { $events } events on { $when }.
record-addendum = Signature { $number } holds: the device's key signed addenda, { $events } events in all, on { $when }.
record-complete = By the seal the record is complete.
record-incomplete = By the seal the record is incomplete. It says what is missing, and why:
record-anchor = Vouched for by the office with the key { $key }: the device's key joined it on { $joined }, and it received the seal over { $events } events on { $received }. Last event: { $last }
record-anchor-receipt = Vouched for by the office with the key { $key }: it received the seal over { $events } events on { $received }; the device joined another office. Last event: { $last }
record-anchor-none = No office vouches for it. Anyone can make a key, sign with it and enclose it.
record-anchor-unknown = Office keys enclosed: { $keys }. Whether they are the offices' own the file cannot show: ask the office for its key, and give it with --office-key.
record-not-enclosed = README.txt, words and keys were not signed by that office; events, photographs and procedures are covered by the seal.
record-personal = The owner's and site's data are enclosed, and are those of the visit.
record-no-personal = The owner's and site's data are not enclosed. The record holds without them.
record-customer = The customer's name and signature are enclosed, and are what was sealed.
record-customer-withheld = The customer gave a name or a signature on the spot; these are withheld. The record holds without them.
record-holds = IT HOLDS.
record-self-consistent = SELF-CONSISTENT ONLY: the record fits itself. No office that you named vouches for it.
record-fails = IT DOES NOT HOLD. Faults: { $n }; see above.

record-fault-zip-none = This is no record file: at byte { $at } no file begins as a ZIP's should.
record-fault-zip-short = The record file ends too early, in or after { $part }, at byte { $at }: the rest is lost.
record-fault-zip-lost = After { $part }, at byte { $at }, neither a file nor the list of files begins: something was put in, taken out or altered there.
record-fault-zip-many = The record file holds more files than a record can have; nothing after byte { $at } was read.
record-fault-zip-head = The ZIP's words before { $part }, from byte { $at } on, were altered.
record-fault-zip-compressed = { $part }, at byte { $at }, is compressed or tells two lengths. In a record nothing is compressed; it was not unpacked.
record-fault-zip-name = { $part }, at byte { $at }, has a name that no file of a record has. Do not unpack this file.
record-fault-zip-twice = { $part } is there twice, again at byte { $at }.
record-fault-zip-order = { $part }, at byte { $at }, is not in its place, or its name was altered.
record-fault-zip-crc = The bytes of { $part } or the ZIP's checksum of them, from byte { $at } on, were altered.
record-fault-zip-list = The ZIP's list of files was altered at byte { $at }, where it tells of { $part }.
record-fault-zip-end = The end of the ZIP was altered at byte { $at }.
record-fault-zip-after = Something was put behind the end of the ZIP, at byte { $at }.
record-fault-too-large = { $part } is longer than such a file can be in a record; it was not read.
record-fault-no-file = { $part } is missing.
record-fault-not-in-record = { $part } does not belong to the record: nothing in it names that file.
record-fault-sum = { $part } was altered: it is not what SHA256SUMS says.
record-fault-sums-line = The line of { $name } in SHA256SUMS was altered.
record-fault-sums-none = SHA256SUMS has no line for { $part }: the file was put in, or the line taken out or altered.
record-fault-sums-form = SHA256SUMS was altered: it is no list of digests any more.
record-fault-unreadable = { $part } was altered and cannot be read any more: { $why }
record-fault-later = { $part } is of the form { $format }, which this version does not know. Use a newer version of the program.
record-fault-not-canonical = { $part } was rewritten: its bytes are not in canonical form.
record-fault-event-unreadable = Event { $seq } was altered: it cannot be read any more.
record-fault-event-foreign = Event { $seq } belongs to another visit ({ $visit }).
record-fault-event-missing = Events are missing: { $seq } to { $to }.
record-fault-event-order = In the place of event { $seq } stands one with the number { $found }: it was put in, doubled or moved.
record-fault-event-altered = Event { $seq } was altered.
record-fault-no-key = The first event names no key of a device, so no seal can be checked.
record-fault-no-seal = The record is not sealed.
record-fault-seal-unreadable = Seal { $number } was altered: { $why }.
record-fault-seal-foreign = Seal { $number } was made with a foreign key ({ $key }). The visit's last device has the key { $device }.
record-fault-seal-signature = The signature of seal { $number } does not hold: the seal was altered.
record-fault-seal-visit = Seal { $number } is of another visit ({ $visit }).
record-fault-seal-order = Seal { $number } covers no more events than the one before it: it was doubled or moved.
record-fault-seal-other = Seal { $number } is about other events than those in the record.
record-fault-seal-list = Seal { $number } says something else about what is missing than the events do.
record-fault-after-seal = Event { $seq } came after the seal and is no addendum.
record-fault-unsealed = Events { $seq } to { $to } are not covered by any seal: they were put in after it.
record-fault-photo-missing = The photograph { $part } of event { $seq } is missing.
record-fault-photo-altered = The photograph { $part } of event { $seq } was altered or swapped: it is not the one that was taken.
record-fault-photo-length = The photograph { $part } has another length than event { $seq } says.
record-fault-pack-missing = The procedure { $part } of event { $seq } is missing.
record-fault-pack-altered = The procedure { $part } of event { $seq } was altered.
record-fault-key-file = { $part } is not the key that the record names.
record-fault-personal = { $part } was altered: these are not the data of the visit's owner and site.
record-fault-customer-altered = The customer's name and signature, { $part } of event { $seq }, were altered: they are not what was sealed.
record-fault-office-key = The key of office { $number } is no key.
record-fault-certificate = What office { $number } says about the device does not hold: { $why }.
record-fault-certificate-other = Office { $number } vouches for another device (key { $key }) than the one that made the record (key { $device }).
record-fault-receipt = A receipt of office { $number } does not hold: { $why }.
record-fault-receipt-other = A receipt of office { $number } is about another state of the record, with { $events } events.
record-fault-enclosed = { $part } was altered, or was signed by none of the offices that the record names.
record-fault-enclosed-other = { $part } is about other files than those enclosed: SHA256SUMS was made anew after the office had signed it.
record-fault-no-anchor = No office that you named (keys { $keys }) vouches for this record. It may have been made by anyone.

record-readme =
    HOW TO VERIFY THIS RECORD WITHOUT US

    This is the sealed record of one visit to a heat pump. It was made so that nobody has to take our word for it: with
    the commands below, a stock JOSE library and any SHA-256 tool you can check that nothing in it was changed since it
    was sealed. You need none of our programs and no connection.
record-readme-files =
    WHAT IS IN IT

    record.json    the events of the visit in order, each as the text that was hashed; the seals; the offices' words
    photographs/   every photograph as the camera wrote it, named by its SHA-256; they may tell the exact place
    packs/         the procedure that was followed, with its words in English and Spanish, named by its SHA-256
    words/         the words for facts and dangers that stand in the events
    keys/          public keys (RFC 7517): of the device that sealed the record, and of the offices that vouch for it
    SHA256SUMS     the SHA-256 of every file but itself and office.jws
    office.jws     the signature of the office that wrote this file, over SHA256SUMS; not there if a device wrote it
    personal.json  name and address, only where they may be given on; the record holds without it
    customer/      name and signature of the customer, where they were given and may be given on; the record holds without
record-readme-how =
    HOW TO DO IT

    Unpack the file into an empty folder and open a terminal there. Python 3 is needed, and the library jwcrypto:
    "pip install jwcrypto". The command below runs the indented lines of the five steps, and nothing else. A step that
    holds says so. If one stops with an error, its last line says what was altered.
    These lines came with the record, and a forger could have sent others: read them first, they are few, or do what the
    steps say with tools of your own. Any other JOSE library does as well: the seals are compact JWS (RFC 7515) signed
    with ES256.
record-readme-sums =
    STEP 1: the files are complete and unaltered. "sha256sum --check SHA256SUMS" does the same.
record-readme-chain =
    STEP 2: each event carries the SHA-256 of the one before it, so none can be changed, taken out or put in.
record-readme-seal =
    STEP 3: the device signed the last event's SHA-256, and the list of what is missing, with the key that it had named
    in the first event or, where it went on in place of another device, in the last event device-changed. Later signatures
    cover addenda.
record-readme-photographs =
    STEP 4: photographs and procedures are the ones that the events name, and so are the customer's name and signature
    where they are enclosed.
record-readme-office =
    STEP 5: who vouches for the device's key? Steps 1 to 4 show that the record fits itself, and a forger with a key of
    their own could bring that about too. An office says, with its own key, when that device joined it and when it
    received the seal. Ask the office for its key in a way that you trust, by telephone for instance, and compare
    it with the one that this step shows.
record-readme-limits =
    WHAT THIS DOES NOT SHOW

    That what was written down was true when it was written. The seal shows that it was not changed afterwards, and by
    which device and when it was sealed.
