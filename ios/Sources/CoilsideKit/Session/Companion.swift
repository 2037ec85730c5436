import CoilsideCore
import Foundation
import Observation

/// One device at work: holds its parts together, and knows nothing of what the screens are about.
@MainActor @Observable
public final class Companion {
    /// The conversation with the core.
    public let session: Session
    /// What is half typed.
    public let fields: Fields
    /// The photograph that is wanted.
    public let photos: Photos
    /// Alarms that wait or ring.
    public let alarms: Alarms
    /// Small pictures of photographs.
    public let previews: Previews
    /// Carries what waits to the office.
    public let sender: Sender
    /// The folders.
    public let home: Home
    @ObservationIgnored let door: DoorQueue
    @ObservationIgnored private let effects: EffectRunner

    /// Opens what lies in the ground's folder. Waits for the disk: not for the main thread's own turn of a screen.
    public static func open(_ ground: Ground, transport: any Transport) async throws -> Companion {
        let home = Home(folder: ground.folder)
        let door = try await Task.detached { try home.open(ground) }.value
        return Companion(door: door, home: home, ground: ground, transport: transport)
    }

    /// Puts the parts around a door that is open.
    public init(door core: any CoreDoor, home: Home, ground: Ground, transport: any Transport) {
        let door = DoorQueue(door: core, clock: ground.clock)
        let fields = Fields()
        let photos = Photos(door: door, camera: ground.camera, place: ground.place, thumbnail: ground.thumbnail)
        let alarms = Alarms(door: door, bell: ground.bell)
        let sender = Sender(door: door, transport: transport, signer: ground.signer)
        let effects = EffectRunner(photos: photos, alarms: alarms, place: ground.place, signer: ground.signer, packs: ground.packs)
        let session = Session(
            door: door,
            on: .init(
                effect: { effects.begin($0) },
                acknowledged: { fields.acknowledged($0) },
                settled: { id in
                    photos.settled(id)
                    alarms.settled(id)
                },
                opened: { alarms.sweep(except: $0) },
                open: { alarms.keep(only: $0) },
                words: { $0.keep(in: home.words) },
                sends: { Task { await sender.hurry() } }))
        self.door = door
        self.home = home
        self.fields = fields
        self.photos = photos
        self.alarms = alarms
        self.sender = sender
        self.effects = effects
        self.session = session
        previews = Previews(door: door)
        fields.send = { [weak session] in session?.act($0) }
        fields.interrupted = { [weak alarms] in alarms?.ringing != nil }
        photos.session = session
        alarms.session = session
        effects.session = session
    }

    /// Begins: reads the screen, takes up what is still asked, and sends what waits.
    public func begin() async {
        await session.open()
        await sender.start()
    }

    /// Presses what a button carries. What is half typed goes first.
    public func press(_ action: Action) {
        fields.flushAll()
        session.act(action)
    }

    /// Looks now and then, as long as the app is before the person's eyes: at alarms twice a second, at the screen every five, and at once
    /// when a waiting time passes a limit.
    public func watch() async {
        var limit: Int64?
        for tick in 0... {
            do { try await Task.sleep(nanoseconds: Self.tickMs * 1_000_000) } catch { return }
            await alarms.look()
            let now = door.now().utcMs
            if tick % 10 == 9 || limit.map({ now >= $0 }) ?? false { await session.refresh() }
            limit = session.screen.flatMap { Waiting.nextLimit($0.blocks, nowUtcMs: now) }
        }
    }

    /// How often the clocks are looked at, milliseconds.
    static let tickMs: UInt64 = 500

    /// This moment, UTC milliseconds, as the core would be told it.
    public var nowUtcMs: Int64 { door.now().utcMs }

    /// The app goes out of sight: nothing half typed stays behind. Returns when the core has it.
    public func leave() async {
        fields.flushAll()
        while !session.isCalm { await Task.yield() }
    }

    /// Nothing is on its way to the core, and no request is being done.
    var isCalm: Bool { session.isCalm && effects.underWay == 0 && photos.stage != .saving }

    /// Where the small picture of a photograph lies.
    public func preview(_ digest: String) -> URL? { previews.file(digest, turn: session.turns) }
}
