import CoilsideCore
import CoilsideKit
import Foundation

@testable import CoilsideKit

/// A clock that the test moves, and that goes on by itself as much faster than the real one as the test says.
final class TestClock: Clock, @unchecked Sendable {
    private let lock = NSLock()
    /// 2026-05-04 08:00 UTC.
    private let beginMs: Int64 = 1_777_881_600_000
    private var passedMs: Int64 = 0
    private let started = Date()
    private let speed: Double

    init(speed: Double) { self.speed = speed }

    func now() -> Now {
        let byItself = Int64(Date().timeIntervalSince(started) * 1000 * speed)
        let ms = lock.withLock { passedMs } + byItself
        return Now(utcMs: beginMs + ms, offsetMin: 0, monoMs: 1000 + ms, monoEpoch: "test")
    }

    func pass(_ ms: Int64) { lock.withLock { passedMs += ms } }
}

/// A camera that gives pictures of its own, or none.
final class TestCamera: Camera, @unchecked Sendable {
    private let lock = NSLock()
    private var count = 0
    private(set) var runs = false
    private(set) var last: Data?
    var problem: CameraProblem?
    var breaks: CameraProblem?

    func start() async throws {
        if let problem { throw problem }
        lock.withLock { runs = true }
    }

    func shoot() async throws -> Data {
        if let breaks { throw breaks }
        let number = lock.withLock {
            count += 1
            return count
        }
        last = Picture.of("camera \(number)")
        return last ?? Data()
    }

    func stop() { lock.withLock { runs = false } }
}

/// A place that is known at once, or not.
struct TestPlace: PlaceSource {
    var problem: PlaceProblem?

    func permission() async -> Permission { problem == nil ? .given : .denied }

    func fix(withinMs: Int64) async throws -> PlaceFix {
        if let problem { throw problem }
        return PlaceFix(latitudeDeg: 1.2345, longitudeDeg: 2.3456, accuracyM: 6, ageMs: 500)
    }
}

/// A place that takes its time, and counts how often it was asked.
final class SlowPlace: PlaceSource, @unchecked Sendable {
    private let lock = NSLock()
    private var count = 0
    var asked: Int { lock.withLock { count } }

    func permission() async -> Permission { .given }

    func fix(withinMs: Int64) async throws -> PlaceFix {
        lock.withLock { count += 1 }
        try await Task.sleep(nanoseconds: 200_000_000)
        return try await TestPlace().fix(withinMs: withinMs)
    }
}

/// Notes what the system was asked to call.
final class TestBell: Bell, @unchecked Sendable {
    private let lock = NSLock()
    private var all: [String: Int64] = [:]
    var allowed = Permission.given
    var set: [String: Int64] { lock.withLock { all } }

    func permission() async -> Permission { allowed }
    func ask() async -> Permission { allowed }
    func set(id: String, atUtcMs: Int64, text: String) async { lock.withLock { all[id] = atUtcMs } }
    func ids() async -> [String] { lock.withLock { Array(all.keys) } }
    func remove(ids: [String]) async { lock.withLock { for id in ids { all[id] = nil } } }
}

/// Carries nothing.
final class NoTransport: Transport, @unchecked Sendable {
    func listen(_ heard: @escaping @Sendable (Answer) -> Void) {}
    func carry(_ request: Sending) {}
}

/// A device with its folder: what is left of it when the app is killed, and the app.
@MainActor
final class Device {
    let folder: URL
    let clock: TestClock
    let signer: SoftwareSigner
    let camera = TestCamera()
    let bell = TestBell()
    var place: any PlaceSource = TestPlace()
    var packs: URL?
    var thumbnail: (@Sendable (Data) -> Thumbnail?)?
    var transport: @MainActor (Home) -> any Transport = { _ in NoTransport() }
    /// Wraps the core's door, to make it fail.
    var wrap: (Door) -> any CoreDoor = { $0 }
    private(set) var door: Door?
    private(set) var app: Companion!
    private(set) var opened = 0
    private var carrier: (any Transport)?

    /// In memory where the system has such a place: a visit syncs hundreds of times.
    init(folder given: URL? = nil, speed: Double = 0) throws {
        clock = TestClock(speed: speed)
        let memory = URL(fileURLWithPath: FileManager.default.fileExists(atPath: "/dev/shm") ? "/dev/shm" : NSTemporaryDirectory())
        folder = given ?? memory.appendingPathComponent("coilside-kit-" + UUID().uuidString, isDirectory: true)
        signer = try SoftwareSigner()
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
    }

    deinit { try? FileManager.default.removeItem(at: folder) }

    var ground: Ground {
        Ground(
            folder: folder, packs: packs, clock: clock, signer: signer, place: place, camera: camera, bell: bell, language: "en",
            thumbnail: thumbnail)
    }

    /// Starts the app.
    func start() async throws {
        let home = Home(folder: folder)
        let core = try await Self.opened(home, ground)
        door = core
        let carrier = transport(home)
        self.carrier = carrier
        app = Companion(door: wrap(core), home: home, ground: ground, transport: carrier)
        opened += 1
        await app.begin()
        await settle()
    }

    /// The door that was let go closes on its own queue, a moment after nobody holds it any more.
    private static func opened(_ home: Home, _ ground: Ground) async throws -> Door {
        for _ in 0..<1000 {
            do { return try home.open(ground) } catch DoorFault.InUse { try await Task.sleep(nanoseconds: 1_000_000) }
        }
        throw StillOpen()
    }

    /// Starts the app with the visit of the tests on its round.
    func startWithVisit() async throws {
        try await start()
        try door?.assigned(assignmentsJson: String(decoding: Data(contentsOf: Paths.assignment), as: UTF8.self))
        app.session.act(.go(to: "round"))
        await settle()
    }

    /// Ends the app without a word, as the system does.
    func kill() async throws {
        weak var gone = door
        await app.sender.stop()
        (carrier as? URLSessionTransport)?.end()
        carrier = nil
        app = nil
        door = nil
        for _ in 0..<2000 where gone != nil { try await Task.sleep(nanoseconds: 1_000_000) }
        if gone != nil { throw StillOpen() }
    }

    /// Looks now and then, as an app that is open does, until it is as wanted.
    func wait(seconds: Double, until reached: @MainActor (Screen) -> Bool) async throws {
        let end = Date().addingTimeInterval(seconds)
        while !reached(screen) {
            guard Date() < end else { throw Stuck(description: "not within \(seconds) s: \(screen)") }
            try await Task.sleep(nanoseconds: 50_000_000)
            await app.session.refresh()
        }
    }

    func killAndStart() async throws {
        try await kill()
        try await start()
    }

    /// Waits until nothing is on its way.
    func settle() async {
        var calm = 0
        while calm < 3 {
            try? await Task.sleep(nanoseconds: 1_000_000)
            calm = app.isCalm ? calm + 1 : 0
        }
    }

    var screen: Screen { app.session.screen! }
}

struct StillOpen: Error {}

/// Where things of the project lie.
enum Paths {
    static let root = URL(fileURLWithPath: #filePath).deletingLastPathComponent().deletingLastPathComponent()
        .deletingLastPathComponent().deletingLastPathComponent().deletingLastPathComponent()
    static let assignment = root.appendingPathComponent("ios/Tests/assignment.json")
    static let answers = root.appendingPathComponent("tests/visits/answers.json")
    static let kinds = root.appendingPathComponent("tests/visits/kinds.txt")
    static let program = root.appendingPathComponent("target/debug/coilside")
}
