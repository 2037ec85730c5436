//! Packs with one thing wrong: each is refused with its file, its line and column, what is wrong and what to do.

use coilside_core::procedure::read::{PackFile, read};

use super::{small, small_with, told};

/// Replaces something in a file of the smallest pack; the first thing that is told then begins with these words.
#[track_caller]
fn refused(file: &str, from: &str, to: &str, says: &str) {
    let read = read(&small_with(file, from, to));
    let all = told(&read, "en");
    assert!(read.loaded.is_none(), "it was loaded");
    assert!(all.iter().any(|one| one.starts_with(says)), "not told: {says}\nbut: {all:#?}");
    for line in told(&read, "es") {
        assert!(!line.contains("fault-") && !line.contains("{ $"), "no Spanish words: {line}");
    }
}

/// The same, and nothing else is told.
#[track_caller]
fn refused_only(file: &str, from: &str, to: &str, says: &str) {
    refused(file, from, to, says);
    assert_eq!(told(&read(&small_with(file, from, to)), "en").len(), 1);
}

#[track_caller]
fn advised(file: &str, from: &str, to: &str, rule: &str) {
    let read = read(&small_with(file, from, to));
    let rules: Vec<_> = read.advice.iter().map(|fault| format!("{} {}", fault.place(), fault.rule)).collect();
    assert!(rules.iter().any(|one| one == rule), "{rules:?}, faults {:?}", told(&read, "en"));
}

#[test]
fn what_is_no_toml_is_told_with_its_place() {
    refused("pack.toml", "id = \"lock\"", "id = \"lock", "pack.toml:89:11 This cannot be read as TOML");
    refused(
        "pack.toml",
        "[[shot]]\nid = \"filter-before\"",
        "[[shot]\nid = \"filter-before\"",
        "pack.toml:50:8 This cannot be read as TOML",
    );
    refused(
        "pack.toml",
        "version = \"1.0.0\"",
        "version = \"1.0.0\"\nversion = \"2.0.0\"",
        "pack.toml:7:1 This cannot be read as TOML: duplicate key",
    );
}

#[test]
fn all_faults_of_one_kind_are_told_at_once() {
    let mut folder = small_with(
        "pack.toml",
        "minutes = 3\n\n[[phase.step]]\nid = \"draw-filter\"",
        "minuts = 3\n\n[[phase.step]]\nid = \"draw-filter\"",
    );
    let toml = &mut folder.files.iter_mut().find(|file| file.name == "pack.toml").unwrap().bytes;
    *toml = String::from_utf8(toml.clone()).unwrap().replace("form = \"liquid\"", "form = 3").into_bytes();
    let told = told(&read(&folder), "en");
    assert_eq!(
        told,
        [
            "pack.toml:60:8 'form' cannot be 3. Write it like this: form = \"liquid\"",
            "pack.toml:93:1 [[step]] has no field 'minuts'. Did you mean 'minutes'? There are: id, when, after, needs, \
             starts, sets, clears, acts, cautions, alone, asks, readings, shots, mix, dwell, opens, homes, may-skip, \
             minutes, parts, gear.",
        ]
    );
}

#[test]
fn fields_and_words_that_nobody_knows_come_with_the_nearest_or_with_all_choices() {
    refused_only(
        "pack.toml",
        "form = \"liquid\"",
        "form = \"liquid\"\ncolour = \"red\"",
        "pack.toml:61:1 [[chemical]] has no field 'colour'. Take it out, or use one of: id, kind, form.",
    );
    refused_only(
        "pack.toml",
        "sets = [\"tag=tagged\"]",
        "sets = [\"tga=tagged\"]",
        "pack.toml:90:9 There is no fact 'tga'. Did you mean 'tag'?",
    );
    refused_only(
        "pack.toml",
        "sets = [\"tag=tagged\"]",
        "sets = [\"tag=hung\"]",
        "pack.toml:90:9 The fact 'tag' has no value 'hung'. Use one of: tagged, untagged.",
    );
    refused_only(
        "pack.toml",
        "sets = [\"tag=tagged\"]",
        "sets = [\"tag\"]",
        "pack.toml:90:9 'tag' is not a fact with its value. Write both with = between, like tag=tagged.",
    );
    refused_only(
        "pack.toml",
        "cautions = [\"shock\", \"fan\"]",
        "cautions = [\"shok\", \"fan\"]",
        "pack.toml:91:13 'cautions' knows no 'shok'. Did you mean 'shock'?",
    );
    refused_only(
        "pack.toml",
        "sets = [\"tag=tagged\"]",
        "sets = [\"tag=tagged\"]\nacts = [\"sweep\"]",
        "pack.toml:91:9 'acts' knows no 'sweep'. Use one of: spray, energise,",
    );
    refused(
        "pack.toml",
        "quantity = \"count\"",
        "quantity = \"colour\"",
        "pack.toml:37:12 'quantity' knows no 'colour'. Use one of: temperature,",
    );
    refused_only(
        "pack.toml",
        "kind = \"neutral\"\n",
        "",
        "pack.toml:57:1 [[chemical]] here has no 'kind'. Add it, like this: kind = \"acid\"",
    );
}

#[test]
fn values_of_the_wrong_kind_are_told_with_an_example() {
    refused_only("pack.toml", "format = 1", "format = 2", "pack.toml:5:10 'format' must lie between 1 and 1.");
    refused_only(
        "pack.toml",
        "format = 1",
        "format = \"1\"",
        "pack.toml:5:10 'format' cannot be \"1\". Write it like this: format = 1",
    );
    refused_only("pack.toml", "version = \"1.0.0\"", "version = \"one\"", "pack.toml:6:11 'one' is no version.");
    refused_only(
        "pack.toml",
        "error-limit = \"0.5\"",
        "error-limit = \"0,5\"",
        "pack.toml:14:15 '0,5' is no decimal number.",
    );
    refused_only(
        "pack.toml",
        "alone = true",
        "alone = \"yes\"",
        "pack.toml:92:9 'alone' cannot be \"yes\". Write it like this: alone = true",
    );
    refused_only("pack.toml", "id = \"mild-soap\"", "id = \"Mild Soap\"", "pack.toml:58:6 'Mild Soap' is no name.");
    refused_only(
        "pack.toml",
        "after = [\"lock\"]",
        "after = \"lock\"",
        "pack.toml:97:9 'after' cannot be \"lock\". Write it like this: after = [\"a-name\"]",
    );
    refused_only(
        "pack.toml",
        "when = [\"filter=washable\"]",
        "when = [\"washable\"]",
        "pack.toml:104:9 'washable' is not a condition with an answer.",
    );
    refused_only(
        "pack.toml",
        "least-s = 300",
        "least-s = 0",
        "pack.toml:109:21 'least-s' must lie between 1 and 86400.",
    );
}

#[test]
fn a_name_that_is_not_there_or_there_twice_is_told_where_it_is_named() {
    refused_only(
        "pack.toml",
        "after = [\"lock\"]",
        "after = [\"lok\"]",
        "pack.toml:97:10 step 'draw-filter' names the step 'lok', which is not there. Did you mean 'lock'?",
    );
    refused_only(
        "pack.toml",
        "shots = [\"filter-after\"]",
        "shots = [\"roof\"]",
        "pack.toml:123:10 step 'put-back' names the shot 'roof', which is not there. Add a [[shot]] with that id, or name one of: filter-after, filter-before.",
    );
    refused(
        "pack.toml",
        "chemical = \"mild-soap\"",
        "chemical = \"wild-soap\"",
        "pack.toml:70:12 mix 'soap-water' names the chemical 'wild-soap'",
    );
    refused_only(
        "pack.toml",
        "when = [\"filter=paper\"]",
        "when = [\"filter=papers\"]",
        "pack.toml:114:9 step 'change-filter' waits for filter=papers, which is no answer. Did you mean 'paper'?",
    );
    refused(
        "pack.toml",
        "id = \"put-back\"",
        "id = \"lock\"",
        "pack.toml:120:6 The step 'lock' is there a second time.",
    );
    refused(
        "pack.toml",
        "asks = [\"filter\"]",
        "asks = []",
        "pack.toml:104:9 step 'soak-filter' waits for an answer to 'filter', and no step asks for it.",
    );
    refused_only(
        "pack.toml",
        "id = \"lock\"\n",
        "id = \"lock\"\nafter = [\"put-back\"]\n",
        "pack.toml:90:9 These wait for each other and never begin: lock → put-back",
    );
}

#[test]
fn numbers_and_facts_that_contradict_are_refused() {
    refused_only(
        "pack.toml",
        "least = \"10\"",
        "least = \"300\"",
        "pack.toml:38:9 reading 'soap-parts': 'least' is above 'most'.",
    );
    refused_only(
        "pack.toml",
        "preset = \"50\"",
        "preset = \"500\"",
        "pack.toml:40:10 reading 'soap-parts': 'preset' lies outside",
    );
    refused_only(
        "pack.toml",
        "preset = \"50\"",
        "usual = [\"50\", \"500\"]",
        "pack.toml:40:9 reading 'soap-parts': 'usual' reaches outside",
    );
    refused_only(
        "pack.toml",
        "preset = \"50\"",
        "usual = [\"90\", \"20\"]",
        "pack.toml:40:9 reading 'soap-parts': 'usual' begins above its end.",
    );
    refused_only(
        "pack.toml",
        "most-s = 1800",
        "most-s = 200",
        "pack.toml:109:21 step 'soak-filter': the least waiting time is longer than the most.",
    );
    refused(
        "pack.toml",
        "dwell = { least-s = 300, most-s = 1800 }",
        "starts = [\"tag=tagged\"]",
        "pack.toml:109:10 step 'soak-filter' has 'starts' but no waiting time.",
    );
    refused_only(
        "pack.toml",
        "option = [{ id = \"washable\" }, { id = \"paper\" }]",
        "option = []",
        "pack.toml:10:10 'option' has too few entries: at least 2.",
    );
    refused_only(
        "pack.toml",
        "parts-water = \"soap-parts\"\n",
        "",
        "pack.toml:68:1 mix 'soap-water' does not say how the label tells the dilution.",
    );
    refused_only(
        "pack.toml",
        "parts-water = \"soap-parts\"",
        "percent = \"soap-parts\"",
        "pack.toml:71:11 mix 'soap-water': 'percent' names 'soap-parts', which is of count. Name a reading of share.",
    );
    refused_only(
        "pack.toml",
        "sets = [\"tag=tagged\"]",
        "sets = [\"tag=tagged\", \"tag=untagged\"]",
        "pack.toml:90:23 step 'lock': 'sets' names the fact 'tag' again.",
    );
    refused_only(
        "pack.toml",
        "sets = [\"tag=tagged\"]",
        "sets = [\"tag=tagged\"]\nclears = [\"tag\"]",
        "pack.toml:91:11 step 'lock' both sets and clears 'tag'.",
    );
    refused(
        "pack.toml",
        "before = \"filter-before\"",
        "before = \"filter-before\"\n\n[[shot]]\nid = \"late\"\nbefore = \"filter-after\"",
        "en.ftl There are no words for 'shot-late', which pack.toml:58 needs.",
    );
    refused_only(
        "pack.toml",
        "id = \"filter-before\"\n\n[[shot]]\nid = \"filter-after\"\nbefore = \"filter-before\"",
        "id = \"filter-before\"\nbefore = \"filter-after\"\n\n[[shot]]\nid = \"filter-after\"",
        "pack.toml:52:10 shot 'filter-before' is taken before 'filter-after'",
    );
    refused_only(
        "pack.toml",
        "as-found = \"air-found\"",
        "as-found = \"soap-volume\"",
        "pack.toml:27:12 reading 'air-left' is of temperature, but 'soap-volume' as found is of volume.",
    );
}

#[test]
fn a_setting_has_both_its_ways() {
    let excursion = "[[phase]]\nid = \"arrive\"";
    let with = |field: &str| {
        format!(
            "[[excursion]]\nid = \"timer\"\n\n[[phase]]\nid = \"arrive\"\n\n[[phase.step]]\nid = \"turn\"\n{field} = \"timer\"\n"
        )
    };
    refused(
        "pack.toml",
        excursion,
        &with("homes"),
        "pack.toml:82:9 The setting 'timer' is brought home, but no step changes it.",
    );
    refused(
        "pack.toml",
        excursion,
        &with("opens"),
        "pack.toml:82:9 The setting 'timer' is changed, but no step brings it home.",
    );
}

#[test]
fn a_caution_that_an_act_or_a_fact_or_a_chemical_calls_for_is_missed() {
    refused(
        "pack.toml",
        "sets = [\"tag=tagged\"]",
        "sets = [\"tag=tagged\", \"vessel=acid-mix\"]",
        "pack.toml:91:12 step 'lock' does vessel=acid-mix and shows no caution for it. Add \"acid\" to its 'cautions'.",
    );
    refused(
        "pack.toml",
        "cautions = [\"fan\"]",
        "cautions = [\"fan\"]\nacts = [\"energise\"]",
        "pack.toml:130:12 step 'unlock' does energise and shows no caution for it. Add \"shock\"",
    );
    refused(
        "pack.toml",
        "cautions = [\"fan\"]",
        "cautions = [\"fan\"]\nacts = [\"spray\"]",
        "pack.toml:130:12 step 'unlock' does spray and shows no caution for it.",
    );
    refused(
        "pack.toml",
        "kind = \"neutral\"",
        "kind = \"hypochlorite\"",
        "pack.toml:103:6 step 'soak-filter' does chemical 'mild-soap' and shows no caution for it. Add \"chlorine\"",
    );
}

#[test]
fn words_are_there_in_every_language_and_none_is_left_over() {
    refused(
        "es.ftl",
        "step-lock = Apagar la caja, poner candado y etiqueta\n    .why = El ventilador arranca solo.\n    .how = Candado propio en el seccionador. Se abre el cajón, ninguna tapa.\n",
        "",
        "es.ftl There are no words for 'step-lock', which pack.toml:89 needs. Add 'step-lock' to this file.",
    );
    refused_only(
        "en.ftl",
        "    .how = Your own lock at the isolator. The drawer is opened, no cover.\n",
        "",
        "es.ftl:47:5 'step-lock.how' is here, but not in en.ftl.",
    );
    refused(
        "en.ftl",
        "step-unlock =",
        "step-unlok =",
        "en.ftl There are no words for 'step-unlock', which pack.toml:127 needs. Did you mean 'step-unlock' where you wrote 'step-unlok'?",
    );
    refused_only(
        "en.ftl",
        "gear-bucket = Bucket",
        "gear-bucket = Bucket of { $litres } L",
        "en.ftl:26:1 'gear-bucket' has no words, or words with a gap that nothing fills.",
    );
    refused_only(
        "en.ftl",
        "gear-bucket = Bucket",
        "gear-bucket = { Bucket",
        "en.ftl:26:1 This cannot be read as Fluent",
    );
    refused_only(
        "en.ftl",
        "gear-bucket = Bucket",
        "gear-bucket = Bucket\ngear-bucket = Pail",
        "en.ftl:27:1 'gear-bucket' is there a second time.",
    );
    refused_only(
        "en.ftl",
        "gear-bucket = Bucket",
        "gear-bucket = Bucket\nmenu-round = Mine",
        "en.ftl:27:1 'menu-round' belongs to the core.",
    );
    refused_only(
        "en.ftl",
        "gear-bucket = Bucket",
        "gear-bucket = Bucket\nlid = Lid",
        "en.ftl:27:1 'lid' is no key of a pack.",
    );
    advised("en.ftl", "gear-bucket = Bucket", "gear-bucket = Bucket\ngear-ladder = Ladder", "en.ftl:27:1 words-unused");
    advised(
        "es.ftl",
        "    .how = La flecha en la dirección del aire.",
        "    .how = Arrow in the direction of the air.",
        "es.ftl:57:5 words-alike",
    );
}

#[test]
fn what_nothing_uses_and_what_the_day_misses_is_advice_and_no_refusal() {
    advised("pack.toml", "gear = [\"bucket\"]\n", "", "pack.toml:66:6 unused");
    advised("pack.toml", "parts = [\"paper-filter\"]\n", "", "pack.toml:63:6 unused");
    advised("pack.toml", "chemical = \"mild-soap\"\n", "", "pack.toml:58:6 unused");
    advised("pack.toml", "chemical = \"mild-soap\"\n", "", "pack.toml:68:1 mix-without-chemical");
    advised("pack.toml", "alone = true\nminutes = 3\n", "alone = true\n", "pack.toml:88:1 minutes-missing");
    advised(
        "pack.toml",
        "as-found = \"air-found\"",
        "as-found = \"air-found\"\nrole = \"air-onn\"",
        "pack.toml:34:8 role-unknown-near",
    );
    let soap = read(&small_with("pack.toml", "chemical = \"mild-soap\"\n", ""));
    assert!(soap.loaded.is_some(), "advice refuses nothing");
}

#[test]
fn a_pack_that_is_not_safe_is_refused_at_the_step_that_is_let_in() {
    let folder = small_with(
        "pack.toml",
        "sets = [\"tag=untagged\"]\ncautions = [\"fan\"]",
        "sets = [\"covers=off\"]\ncautions = [\"sharp\"]",
    );
    let read = read(&folder);
    assert!(read.loaded.is_none() && !read.proof.as_ref().unwrap().is_proved());
    let told = told(&read, "en");
    assert!(told[0].starts_with("pack.toml:127:6 The checker found a way into danger"), "{told:?}");
}

#[test]
fn files_that_are_missing_or_no_text_are_told() {
    let mut folder = small();
    folder.files.retain(|file| file.name == "pack.toml");
    assert_eq!(
        told(&read(&folder), "en"),
        [
            "en.ftl The words of this language are missing. Add the file with the words of this pack.",
            "es.ftl The words of this language are missing. Add the file with the words of this pack.",
        ]
    );
    folder.files.clear();
    assert!(told(&read(&folder), "en")[0].starts_with("pack.toml There is no such file in the folder."));
    let mut folder = small();
    folder.files[0] = PackFile { name: "en.ftl".into(), bytes: b"pack = Box\nstep-look = L\xfcften\n".to_vec() };
    assert!(
        told(&read(&folder), "en")
            .contains(&"en.ftl:2:14 What stands here is no UTF-8 text. Save the file as UTF-8.".to_owned())
    );
}

#[test]
fn a_file_from_another_system_reads_the_same() {
    let mut folder = small();
    for file in &mut folder.files {
        let text = String::from_utf8(file.bytes.clone()).unwrap().replace('\n', "\r\n");
        file.bytes = format!("\u{feff}{text}").into_bytes();
    }
    let (here, there) = (read(&small()).loaded.unwrap(), read(&folder).loaded.unwrap());
    assert_eq!(here.digest, there.digest);
}

/// Whatever is cut out of a pack, reading it ends in a pack or in faults with words, never in a panic.
#[test]
fn a_pack_that_was_cut_anywhere_is_read_to_an_end() {
    for name in ["pack.toml", "en.ftl"] {
        let whole = small().files.iter().find(|file| file.name == name).unwrap().bytes.clone();
        for at in (0..whole.len()).step_by(7) {
            let mut folder = small();
            folder.files.iter_mut().find(|file| file.name == name).unwrap().bytes = whole[..at].to_vec();
            let read = read(&folder);
            assert_eq!(read.loaded.is_none(), !read.faults.is_empty(), "{name} cut at {at}");
            assert!(told(&read, "en").iter().all(|line| !line.contains("fault-")), "{name} cut at {at}");
        }
    }
}

#[test]
fn only_the_table_of_materials_lets_acid_at_an_exchanger() {
    refused(
        "pack.toml",
        "option = [{ id = \"washable\" }, { id = \"paper\" }]",
        "option = [{ id = \"washable\", sets = [\"exchanger-acid=allowed\"] }, { id = \"paper\" }]",
        "pack.toml:10:38 condition 'filter', option 'washable': an answer may not set exchanger-acid=allowed.",
    );
    refused(
        "pack.toml",
        "sets = [\"tag=tagged\"]",
        "sets = [\"tag=tagged\", \"exchanger-acid=allowed\"]",
        "pack.toml:90:23 step 'lock': it sets exchanger-acid=allowed, and no condition has the role exchanger-metal, descaler-acid.",
    );
}
