//! `README.txt`: how to verify a record without us. Its words are Fluent's, in every language; its commands are the same in
//! all of them and stand once, indented by four spaces as nothing else in it is. A test follows them to the letter.

use crate::words::{LANGUAGES, Words, WordsError};

/// Runs the indented lines of the README: one line that every shell takes.
const RUN: &str =
    r#"python3 -c "exec(''.join(l[4:] for l in open('README.txt', encoding='utf-8') if l[:4] == '    '))""#;

/// The steps: the name of their words, and their commands. Python 3 with the library jwcrypto from PyPI.
const STEPS: &[(&str, &str)] = &[
    (
        "sums",
        r#"import hashlib, json, base64, pathlib
def sha256(data):
    return hashlib.sha256(data).hexdigest()
listed = {"SHA256SUMS", "office.jws"}
for line in pathlib.Path("SHA256SUMS").read_text("ascii").splitlines():
    digest, name = line.split("  ")
    assert sha256(pathlib.Path(name).read_bytes()) == digest, name + " was altered"
    listed.add(name)
for path in pathlib.Path(".").rglob("*"):
    assert path.is_dir() or path.as_posix() in listed, path.as_posix() + " does not belong here"
print("step 1 holds")"#,
    ),
    (
        "chain",
        r#"record = json.loads(pathlib.Path("record.json").read_text("utf-8"))
events, last = [], "0" * 64
for number, text in enumerate(record["events"]):
    event = json.loads(text)
    assert event["seq"] == number and event["visit"] == record["visit"], f"event {number} is out of place"
    assert event["prev"] == last, f"event {number} does not follow the one before: one of the two was altered"
    last = sha256(text.encode("utf-8"))
    events.append(event)
print("step 2 holds:", len(events), "events")"#,
    ),
    (
        "seal",
        r#"from jwcrypto import jwk, jws
def key_of(name):
    return jwk.JWK.from_json(pathlib.Path(name).read_text("ascii"))
def hex_of(key):
    part = lambda text: base64.urlsafe_b64decode(text + "=").hex()
    return "04" + part(key["x"]) + part(key["y"])
def opened(text, key):
    token = jws.JWS()
    token.allowed_algs = ["ES256"]
    token.deserialize(text)
    token.verify(key)
    return json.loads(token.payload)
device = key_of("keys/device.jwk")
writers = [event["device_key"] for event in events if event["kind"] in ("visit-opened", "device-changed")]
assert hex_of(device) == writers[-1], "the key is not that of the last device that wrote the visit"
for seal in record["seals"]:
    said = opened(seal, device)
    assert said["visit"] == record["visit"], "the seal is of another visit"
    assert said["last"] == sha256(record["events"][said["next"] - 1].encode("utf-8")), "the seal is about other events"
    print("sealed:", said["next"], "events; complete:", said["complete"], "; missing:", said["missing"])
assert said["next"] == len(events), "events were added after the last seal"
print("step 3 holds: sealed by the key", sha256(bytes.fromhex(hex_of(device)))[:16])"#,
    ),
    (
        "photographs",
        r#"for event in events:
    if event["kind"] == "photo-taken":
        [path] = pathlib.Path("photographs").glob(event["digest"] + ".*")
        assert sha256(path.read_bytes()) == event["digest"], path.name + " was altered"
    if event["kind"] == "run-started":
        pack = pathlib.Path("packs") / (event["pack_digest"] + ".json")
        assert sha256(pack.read_bytes()) == event["pack_digest"], pack.name + " was altered"
    if event["kind"] == "customer-noted" and "shown" in event:
        signed = pathlib.Path("customer") / (event["shown"] + ".json")
        if signed.exists():
            assert sha256(signed.read_bytes()) == event["shown"], signed.name + " was altered"
        else:
            print("the customer's name and signature are withheld:", event["shown"][:16])
print("step 4 holds")"#,
    ),
    (
        "office",
        r#"for number, office in enumerate(record["offices"], 1):
    key = key_of(f"keys/office-{number}.jwk")
    assert hex_of(key) == office["key"], "the office's key is another one"
    if "certificate" in office:
        said = opened(office["certificate"], key)
        assert said["device_key"] == hex_of(device), "the office vouches for another device"
        print("the device joined the office at", said["at_utc_ms"], "ms after 1970-01-01 UTC")
    for receipt in office["receipts"]:
        said = opened(receipt, key)
        assert said["visit"] == record["visit"], "the receipt is of another visit"
        assert said["last"] == sha256(record["events"][said["next"] - 1].encode("utf-8")), "the receipt is about other events"
        print("the office received", said["next"], "events at", said["at_utc_ms"], "ms after 1970-01-01 UTC")
    print("step 5 holds if this is the office's key:", sha256(bytes.fromhex(office["key"]))[:16])
if record["offices"]:
    by = [key_of(f"keys/office-{n}.jwk") for n in range(1, len(record["offices"]) + 1)]
    word = pathlib.Path("office.jws").read_text("ascii")
    signer = [key for key in by if json.loads(base64.urlsafe_b64decode(word.split(".")[1] + "=="))["office_key"] == hex_of(key)]
    assert opened(word, signer[0])["sums"] == sha256(pathlib.Path("SHA256SUMS").read_bytes()), "the list was altered"
else:
    print("no office vouches for this record: it shows only that it fits itself")"#,
    ),
];

/// The text, all languages in it.
///
/// # Errors
/// Where the core's own words cannot be read.
pub fn text() -> Result<String, WordsError> {
    let words: Vec<Words> = LANGUAGES.iter().map(|language| Words::new(language, None)).collect::<Result<_, _>>()?;
    let all = |key: &str| words.iter().map(|words| words.text(key) + "\n\n").collect::<String>();
    let mut text = all("record-readme") + &all("record-readme-files") + &all("record-readme-how");
    text.push_str(RUN);
    text.push_str("\n\n");
    for (name, commands) in STEPS {
        text.push_str(&all(&format!("record-readme-{name}")));
        for line in commands.lines() {
            text.push_str("    ");
            text.push_str(line);
            text.push('\n');
        }
        text.push('\n');
    }
    text.push_str(all("record-readme-limits").trim_end());
    text.push('\n');
    Ok(text)
}
