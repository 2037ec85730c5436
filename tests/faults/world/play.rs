//! A world: phones, an office and the network between them, in a time of its own. Everything comes out of its seed, so a
//! world can be played again by its number.

use std::collections::{BTreeMap, VecDeque};
use std::rc::Rc;

use coilside_core::sync::{Network, SendRequest};

use super::clock::{Clock, MORNING_MS};
use super::invariants::{self, Broken, Ledger, Watch};
use super::parts::{Call, Office, Phone, Reply, Stop};
use super::plan::{Act, Plan, Size, Trouble};
use super::trace::Trace;
use super::wire::{Back, Trip, Weather, spoil};
use crate::random::Random;

/// The pauses of a shell's sending (`web/src/sender.rs`).
const PAUSE_SHORT_MS: i64 = 200;
const PAUSE_LONG_MS: i64 = 5_000;
/// How often a person looks whether the office lets their phone in.
const LOOK_EVERY_MS: i64 = 60_000;
/// Once the network holds everything must be safe within this time: an office may have asked for an hour's rest.
const CALM_LASTS_MS: i64 = 3 * 3_600_000;
/// So many requests of one world are an engine that turns in circles.
const REQUESTS_MOST: u64 = 6_000;

/// What happens next.
enum Due {
    Tick(usize, u64),
    Arrive { phone: usize, boot: u64, call: Call, back: Option<Back> },
    Answer { phone: usize, boot: u64, id: String, reply: Reply },
    Act(usize, Act),
    Trouble(Trouble),
    KillPhone(usize, u64, bool),
    KillOffice(u64, bool, i64),
    PhoneStarts(usize),
    OfficeStarts,
    PhoneHasRoom(usize),
    OfficeHasRoom,
    Look(usize),
    Calm,
}

/// How often each thing happened: a world in which nothing goes wrong shows nothing.
pub(crate) type Count = BTreeMap<&'static str, u64>;

/// What came of a world.
pub(crate) struct Outcome {
    pub(crate) hash: u64,
    pub(crate) broken: Option<Broken>,
    pub(crate) count: Count,
    pub(crate) lines: Vec<String>,
}

struct Seat<P> {
    phone: P,
    key: String,
    /// The token that the shell was started with.
    script: Option<String>,
    clock: Clock,
    weather: Weather,
    up: bool,
    boot: u64,
    tick: u64,
    pause_ms: i64,
    watch: Watch,
    ledger: Ledger,
    earlier: VecDeque<Reply>,
    written: u32,
    /// Versions of the disks that were compared last.
    compared: (u64, u64),
}

/// A world.
pub(crate) struct World<P, O> {
    random: Random,
    now_ms: i64,
    order: u64,
    queue: BTreeMap<(i64, u64), Due>,
    seats: Vec<Seat<P>>,
    office: O,
    office_up: bool,
    office_boot: u64,
    calm: bool,
    /// The office's power may fail.
    power: bool,
    requests: u64,
    news: u32,
    trace: Trace,
    count: Count,
}

impl<P: Phone, O: Office> World<P, O> {
    /// Plays a world from its seed to its end.
    pub(crate) fn play(
        seed: u64,
        size: &Size,
        read: bool,
        office: impl FnOnce(&Plan, Random) -> O,
        phone: impl Fn(usize, bool, Random) -> (P, String, Option<String>),
    ) -> Outcome {
        let mut random = Random::of(seed);
        let plan = Plan::draw(size, &mut random);
        let office = office(&plan, Random::of(random.next()));
        let mut world = World {
            now_ms: 0,
            order: 0,
            queue: BTreeMap::new(),
            seats: Vec::new(),
            office,
            office_up: true,
            office_boot: 0,
            calm: false,
            power: size.power,
            requests: 0,
            news: 0,
            trace: Trace::new(read),
            count: Count::new(),
            random,
        };
        for at in 0..plan.phones {
            let random = Random::of(world.random.next());
            let (mut phone, key, script) = phone(at, plan.scripted[at], random);
            let mut clock = Clock::default();
            clock.ahead_ms = world.random.pick(&[0, 0, -90_000, 45_000, 7_200_000]);
            phone.start(&clock.at(0));
            world.seats.push(Seat {
                phone,
                key,
                script,
                clock,
                weather: Weather::fair(),
                up: true,
                boot: 0,
                tick: 0,
                pause_ms: PAUSE_SHORT_MS,
                watch: Watch::default(),
                ledger: Ledger::default(),
                earlier: VecDeque::new(),
                written: 0,
                compared: (0, 0),
            });
            world.after(at as i64, Due::Look(at));
            world.wake(at, 5);
        }
        for (at_ms, phone, act) in plan.acts {
            world.after(at_ms, Due::Act(phone, act));
        }
        for (at_ms, trouble) in plan.troubles {
            world.after(at_ms, Due::Trouble(trouble));
        }
        world.after(plan.calm_ms, Due::Calm);
        let broken = world.run().err();
        if let Some(broken) = &broken {
            world.trace.note(world.now_ms, format_args!("BROKEN: {broken}"));
        }
        Outcome { hash: world.trace.hash(), broken, count: world.count, lines: world.trace.lines() }
    }

    fn after(&mut self, ms: i64, due: Due) {
        self.order += 1;
        self.queue.insert((self.now_ms + ms, self.order), due);
    }

    fn happened(&mut self, what: &'static str) {
        *self.count.entry(what).or_default() += 1;
    }

    /// The next look at what a phone wants sent; the one that was due before is called off.
    fn wake(&mut self, at: usize, ms: i64) {
        self.seats[at].tick += 1;
        let tick = self.seats[at].tick;
        self.after(ms, Due::Tick(at, tick));
    }

    fn run(&mut self) -> Result<(), Broken> {
        let mut ends_ms = i64::MAX;
        while let Some(((at_ms, _), due)) = self.queue.pop_first() {
            self.now_ms = at_ms;
            if at_ms > ends_ms {
                return Err(self.what_waits());
            }
            if matches!(due, Due::Calm) {
                ends_ms = at_ms + CALM_LASTS_MS;
            }
            self.happen(due)?;
            self.compare()?;
            if self.calm && self.is_at_rest() {
                return self.close();
            }
        }
        Err("nothing happens any more".to_owned())
    }

    fn compare(&mut self) -> Result<(), Broken> {
        let (office, version) = self.office.disk();
        for seat in &mut self.seats {
            let (phone, own) = seat.phone.disk();
            if seat.compared != (own, version) {
                seat.compared = (own, version);
                seat.ledger.look(phone)?;
                invariants::disks(phone, office)?;
            }
        }
        Ok(())
    }

    fn is_at_rest(&mut self) -> bool {
        let (office, _) = self.office.disk();
        self.office_up && self.seats.iter_mut().all(|seat| seat.up && invariants::at_rest(seat.phone.disk().0, office))
    }

    fn close(&mut self) -> Result<(), Broken> {
        self.trace.note(self.now_ms, format_args!("at rest after {} requests", self.requests));
        let (office, _) = self.office.disk();
        let mut disks = Vec::new();
        for seat in &mut self.seats {
            let (disk, _) = seat.phone.disk();
            seat.ledger.close(disk)?;
            disks.push(disk.clone());
        }
        invariants::equal(disks.iter(), office)
    }

    fn what_waits(&mut self) -> Broken {
        let mut waits = Vec::new();
        let (office, _) = self.office.disk();
        for (at, seat) in self.seats.iter_mut().enumerate() {
            let out = seat.phone.is_out(&seat.clock.at(self.now_ms));
            let (disk, _) = seat.phone.disk();
            let open = disk.rows.iter().filter(|row| row.state != super::parts::State::Safe);
            let open: Vec<_> = open.map(|row| format!("{:?} {} {:?}", row.row.kind, row.row.id, row.state)).collect();
            waits.push(format!("phone {at}: {open:?}, news {}, out {out}", disk.withdrawn == office.withdrawn));
        }
        format!("the network has held for {} s and not everything is safe: {waits:?}", CALM_LASTS_MS / 1_000)
    }

    fn happen(&mut self, due: Due) -> Result<(), Broken> {
        match due {
            Due::Tick(at, tick) => self.tick(at, tick)?,
            Due::Arrive { phone, boot, call, back } => self.arrives(phone, boot, &call, back),
            Due::Answer { phone, boot, id, reply } => self.answered(phone, boot, &id, &reply),
            Due::Act(at, act) => self.act(at, act),
            Due::Trouble(trouble) => self.trouble(trouble),
            Due::KillPhone(at, boot, boots) if self.seats[at].up && self.seats[at].boot == boot => {
                self.phone_dies(at, boots);
            }
            Due::KillOffice(boot, power, away_ms) if self.office_up && self.office_boot == boot => {
                self.office_dies(power, away_ms);
            }
            Due::KillPhone(..) | Due::KillOffice(..) => {}
            Due::PhoneStarts(at) => self.phone_starts(at),
            Due::OfficeStarts => self.office_starts(),
            Due::PhoneHasRoom(at) => self.seats[at].phone.fill(false),
            Due::OfficeHasRoom => self.office.fill(false),
            Due::Look(at) => self.look(at),
            Due::Calm => self.calm_comes(),
        }
        Ok(())
    }

    fn tick(&mut self, at: usize, tick: u64) -> Result<(), Broken> {
        let seat = &mut self.seats[at];
        if !seat.up || seat.tick != tick {
            return Ok(());
        }
        let window_ms = match seat.weather.window {
            None => None,
            Some((every, lasts)) => {
                let into = self.now_ms % every;
                if into >= lasts {
                    self.wake(at, every - into);
                    return Ok(());
                }
                Some(lasts - into)
            }
        };
        let network = Network { link: seat.weather.link, window_ms, office: seat.script.is_some() };
        seat.watch.network(network.link);
        match seat.phone.requests(network, &seat.clock.at(self.now_ms)) {
            Err(Stop::Killed) => self.phone_dies(at, false),
            Err(Stop::Refused) => self.wake(at, PAUSE_LONG_MS),
            Ok(requests) => {
                seat.pause_ms =
                    if requests.is_empty() { (seat.pause_ms * 2).min(PAUSE_LONG_MS) } else { PAUSE_SHORT_MS };
                let pause_ms = seat.pause_ms;
                for request in requests {
                    self.send(at, request)?;
                }
                self.wake(at, pause_ms);
            }
        }
        Ok(())
    }

    fn send(&mut self, at: usize, mut request: SendRequest) -> Result<(), Broken> {
        self.requests += 1;
        if self.requests > REQUESTS_MOST {
            return Err(format!("{} requests and no end", self.requests));
        }
        let seat = &mut self.seats[at];
        let Trip { arrivals, back } = seat.weather.trip(&request, &mut self.random);
        self.trace.note(
            self.now_ms,
            format_args!("phone {at} sends {} of {} bytes; {arrivals:?}, {back:?}", request.id, request.body.length()),
        );
        seat.watch.goes_out(&request, self.now_ms)?;
        if let (None, Some(token)) = (&request.origin, &seat.script) {
            request.headers.push(("Authorization".into(), format!("Bearer {token}")));
        }
        let (boot, id, request) = (seat.boot, request.id.clone(), Rc::new(request));
        if arrivals.is_empty() {
            self.happened("lost");
        }
        if arrivals.len() > 1 {
            self.happened("arrived twice");
        }
        let mut first = Some(back.clone());
        for (ms, came) in arrivals {
            let call = Call { request: Rc::clone(&request), came };
            if !call.is_whole() {
                self.happened("cut");
            }
            let back = first.take().filter(|back| matches!(back, Back::Office { .. }));
            self.after(ms, Due::Arrive { phone: at, boot, call, back });
        }
        match back {
            Back::None(ms) => self.after(ms, Due::Answer { phone: at, boot, id, reply: Reply::default() }),
            Back::Instead(ms, reply) => {
                self.happened("something else answered");
                self.after(ms, Due::Answer { phone: at, boot, id, reply });
            }
            Back::Never | Back::Office { .. } => {}
        }
        Ok(())
    }

    fn arrives(&mut self, at: usize, boot: u64, call: &Call, back: Option<Back>) {
        let id = &call.request.id;
        let reply = if self.office_up {
            match self.office.take(call, MORNING_MS + self.now_ms) {
                Ok(reply) => reply,
                Err(_) => {
                    self.trace.note(self.now_ms, format_args!("the office dies in {id}"));
                    self.happened("office died at a write");
                    let (power, away_ms) =
                        (self.random.chance(500) && self.power, self.random.pick(&[1_000, 30_000, 200_000]));
                    self.office_dies(power, away_ms);
                    Reply::default()
                }
            }
        } else {
            Reply::default()
        };
        self.trace.note(
            self.now_ms,
            format_args!("the office got {} bytes of {id} of phone {at}: {}", call.came, reply.status),
        );
        let Some(Back::Office { after_ms, spoilt, again_ms }) = back else { return };
        let reply = match spoilt {
            // What lets a device in cannot be made up by anybody between.
            Some(way) if reply.status > 0 && !["join/", "nonce/", "token/"].iter().any(|own| id.starts_with(own)) => {
                self.happened("answer spoilt");
                spoil(&reply, way, self.seats[at].earlier.front())
            }
            _ => {
                let earlier = &mut self.seats[at].earlier;
                earlier.push_back(reply.clone());
                earlier.truncate(8);
                if earlier.len() > 4 {
                    earlier.pop_front();
                }
                reply
            }
        };
        if let Some(again_ms) = again_ms {
            self.happened("answered twice");
            let (id, reply) = (id.clone(), reply.clone());
            self.after(after_ms + again_ms, Due::Answer { phone: at, boot, id, reply });
        }
        self.after(after_ms, Due::Answer { phone: at, boot, id: id.clone(), reply });
    }

    fn answered(&mut self, at: usize, boot: u64, id: &str, reply: &Reply) {
        if !self.seats[at].up {
            return;
        }
        // A shell that sends in the background hears also of what was sent before it was killed.
        if self.seats[at].boot != boot && !self.random.chance(300) {
            return;
        }
        let seat = &mut self.seats[at];
        self.trace.note(self.now_ms, format_args!("phone {at} hears {} {} to {id}", reply.status, reply.told(id)));
        seat.watch.comes_back(id, reply, self.now_ms);
        match seat.phone.answered(id, reply, &seat.clock.at(self.now_ms)) {
            Err(Stop::Killed) => {
                self.happened("phone died at a write");
                self.phone_dies(at, false);
            }
            Err(Stop::Refused) => {
                self.happened("phone had no room for an answer");
                self.wake(at, PAUSE_SHORT_MS);
            }
            Ok(()) => self.wake(at, 1),
        }
    }

    fn act(&mut self, at: usize, act: Act) {
        if !self.seats[at].up {
            return;
        }
        let now = self.seats[at].clock.at(self.now_ms);
        let seat = &mut self.seats[at];
        seat.written += 1;
        let text = format!("note {} of phone {at}", seat.written);
        let done = match act {
            Act::Write => seat.phone.write(&text, &now),
            Act::Shoot(bytes) => seat.phone.shoot(&text, bytes, &now),
            Act::Seal => seat.phone.seal(&now),
            Act::Hurry => seat.phone.hurry(&now),
        };
        if let (Act::Hurry, Ok(())) = (act, done) {
            seat.watch.rests_end();
        }
        if let (Act::Write, Ok(())) = (act, done) {
            seat.ledger.acknowledged.push(text.clone());
        }
        self.trace.note(self.now_ms, format_args!("person {at}: {act:?} {text}: {done:?}"));
        match done {
            Err(Stop::Killed) => {
                self.happened("phone died at a write");
                self.phone_dies(at, false);
            }
            _ => self.wake(at, 1),
        }
    }

    fn trouble(&mut self, trouble: Trouble) {
        if self.calm {
            return;
        }
        self.trace.note(self.now_ms, format_args!("{trouble:?}"));
        match trouble {
            Trouble::PhoneDies { phone, writes, boots } => {
                self.seats[phone].phone.dies_at_write(Some(writes));
                let (boot, soon) = (self.seats[phone].boot, self.random.between(1, 90_000));
                self.after(soon, Due::KillPhone(phone, boot, boots));
            }
            Trouble::OfficeDies { writes, power, away_ms } => {
                self.office.dies_at_write(Some(writes));
                let soon = self.random.between(1, 90_000);
                self.after(soon, Due::KillOffice(self.office_boot, power, away_ms));
            }
            Trouble::PhoneFull { phone, for_ms } => {
                self.happened("phone full");
                self.seats[phone].phone.fill(true);
                self.after(for_ms, Due::PhoneHasRoom(phone));
            }
            Trouble::OfficeFull { for_ms } => {
                self.happened("office full");
                self.office.fill(true);
                self.after(for_ms, Due::OfficeHasRoom);
            }
            Trouble::ClockJumps { phone, by_ms } => {
                self.happened("clock jumped");
                self.seats[phone].clock.ahead_ms += by_ms;
            }
            Trouble::TimePasses { ms } => {
                self.happened("time passed");
                let queue = std::mem::take(&mut self.queue);
                self.queue = queue.into_iter().map(|((at_ms, order), due)| ((at_ms + ms, order), due)).collect();
                self.now_ms += ms;
            }
            Trouble::Revoked { phone } => {
                self.happened("revoked");
                if self.office_up {
                    self.office.revoke(&self.seats[phone].key, MORNING_MS + self.now_ms);
                }
            }
            Trouble::News => {
                self.news += 1;
                if self.office_up {
                    self.office.withdraw(&format!("a{}", self.news), MORNING_MS + self.now_ms);
                }
            }
            Trouble::Weather { phone, weather } => {
                if weather.portal {
                    self.happened("captive portal");
                }
                self.seats[phone].weather = weather;
                self.wake(phone, 1);
            }
        }
    }

    fn phone_dies(&mut self, at: usize, boots: bool) {
        self.happened("phone killed");
        self.trace.note(self.now_ms, format_args!("phone {at} is killed"));
        let seat = &mut self.seats[at];
        seat.phone.kill();
        seat.up = false;
        seat.boot += 1;
        seat.watch = Watch::default();
        if boots {
            seat.clock.boot(self.now_ms);
        }
        let away_ms = self.random.between(100, 60_000);
        self.after(away_ms, Due::PhoneStarts(at));
    }

    fn phone_starts(&mut self, at: usize) {
        self.trace.note(self.now_ms, format_args!("phone {at} starts"));
        let seat = &mut self.seats[at];
        seat.up = true;
        seat.phone.start(&seat.clock.at(self.now_ms));
        self.wake(at, 1);
    }

    fn office_dies(&mut self, power: bool, away_ms: i64) {
        self.happened(if power { "office lost its power" } else { "office killed" });
        self.trace.note(self.now_ms, format_args!("the office is killed, power {power}"));
        self.office.kill(power);
        self.office_up = false;
        self.office_boot += 1;
        self.after(away_ms, Due::OfficeStarts);
    }

    fn office_starts(&mut self) {
        self.trace.note(self.now_ms, format_args!("the office starts"));
        self.office_up = true;
        self.office.start(MORNING_MS + self.now_ms);
    }

    /// A person looks at the outbox: is the device let in, is something stuck?
    fn look(&mut self, at: usize) {
        self.after(LOOK_EVERY_MS, Due::Look(at));
        let seat = &mut self.seats[at];
        if !seat.up {
            return;
        }
        let now = seat.clock.at(self.now_ms);
        let stuck = seat.phone.disk().0.rows.iter().any(|row| row.state == super::parts::State::Stuck);
        if stuck && (self.calm || self.random.chance(100)) {
            self.act(at, Act::Hurry);
            return;
        }
        let eager = self.now_ms < 10 || self.calm || self.random.chance(500);
        if !eager || !self.office_up || !seat.phone.is_out(&now) {
            return;
        }
        let Some(link) = self.office.link(MORNING_MS + self.now_ms) else { return };
        self.trace.note(self.now_ms, format_args!("person {at} joins by a fresh link"));
        let seat = &mut self.seats[at];
        match seat.phone.join(&link, &now) {
            Ok(()) => {
                seat.watch.joins();
                self.happened("joined");
                self.wake(at, 1);
            }
            Err(Stop::Killed) => self.phone_dies(at, false),
            Err(Stop::Refused) => {}
        }
    }

    /// From now on nothing goes wrong any more.
    fn calm_comes(&mut self) {
        self.trace.note(self.now_ms, format_args!("the network holds from now on"));
        self.calm = true;
        self.office.fill(false);
        self.office.dies_at_write(None);
        for at in 0..self.seats.len() {
            let seat = &mut self.seats[at];
            seat.phone.fill(false);
            seat.phone.dies_at_write(None);
            seat.weather = Weather::fair();
            self.wake(at, 1);
        }
    }
}
