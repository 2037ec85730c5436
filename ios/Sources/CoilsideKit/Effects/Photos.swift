import CoilsideCore
import Foundation
import Observation

/// A photograph that the core asked for.
public struct Wanted: Sendable, Equatable, Identifiable {
    /// The request.
    public let id: String
    /// The letter of what it belongs to; empty where it belongs to none.
    public let unit: String
    /// Which photograph of the list.
    public let slot: String
    /// Its title.
    public let title: String
    /// What it must show.
    public let show: String
}

/// Takes the photographs that are wanted, one after another: with the camera, or a file that is kept as it is.
@MainActor @Observable
public final class Photos {
    /// Where the taking stands.
    public enum Stage: Sendable, Equatable {
        /// The person chooses: camera or file.
        case choose
        /// The camera starts.
        case starting
        /// The camera shows what it sees.
        case camera
        /// The bytes are put down.
        case saving
    }

    /// How long a photograph waits for its place, milliseconds.
    static let placePatienceMs: Int64 = 2000

    private var queue: [Wanted] = []
    /// Where the first of them stands.
    public private(set) var stage = Stage.choose
    /// What went wrong: a key of the shell's words.
    public private(set) var problem: Trouble?
    /// The photograph that is wanted first.
    public var wanted: Wanted? { queue.first }

    @ObservationIgnored weak var session: Session?
    @ObservationIgnored private let door: DoorQueue
    @ObservationIgnored private let camera: any Camera
    @ObservationIgnored private let place: any PlaceSource
    @ObservationIgnored private let thumbnail: (@Sendable (Data) -> Thumbnail?)?
    /// Small pictures of originals that the core has not taken in yet, by request.
    @ObservationIgnored private var small: [String: Thumbnail] = [:]

    init(door: DoorQueue, camera: any Camera, place: any PlaceSource, thumbnail: (@Sendable (Data) -> Thumbnail?)?) {
        self.door = door
        self.camera = camera
        self.place = place
        self.thumbnail = thumbnail
    }

    func want(_ wanted: Wanted) {
        if !queue.contains(where: { $0.id == wanted.id }) { queue.append(wanted) }
    }

    /// Starts the camera; asks the person for leave where needed.
    public func startCamera() async {
        guard let wanted, stage == .choose else { return }
        to(.starting, nil)
        do {
            try await camera.start()
            // Turned down while the camera started.
            guard self.wanted == wanted, stage == .starting else { return camera.stop() }
            to(.camera, nil)
        } catch {
            let denied = error as? CameraProblem == .denied
            if self.wanted == wanted { to(.choose, Trouble(key: denied ? "shell-camera-refused" : "shell-camera-none", detail: "")) }
        }
    }

    /// Takes the picture that the camera sees.
    public func shutter() async {
        guard stage == .camera else { return }
        let seen = wanted
        do {
            let bytes = try await camera.shoot()
            guard wanted == seen, stage == .camera else { return }
            await take(bytes)
        } catch {
            camera.stop()
            to(.choose, Trouble(key: "shell-camera-none", detail: ""))
        }
    }

    /// Takes a picture's original bytes, from the camera or out of a file. The picture stays wanted until the core has it.
    public func take(_ bytes: Data) async {
        guard let wanted, stage != .saving else { return }
        camera.stop()
        to(.saving, nil)
        let fix = Task { [place] in await Self.atHand(place) }
        do {
            try await door.call { door, _ in try Incoming.put(bytes, at: try door.incomingPath(effectId: wanted.id)) }
        } catch {
            to(.choose, .of(error))
            return
        }
        if let thumbnail { small[wanted.id] = await Task.detached { thumbnail(bytes) }.value }
        session?.done(wanted.id, .photo(place: await fix.value))
    }

    /// A file that the system could not give.
    public func fileProblem() { to(.choose, Trouble(key: "shell-picture-none", detail: "")) }

    /// The person wants none.
    public func cancel() {
        guard let wanted, stage != .saving else { return }
        settled(wanted.id)
        session?.done(wanted.id, .cancelled)
    }

    /// The core has heard how a request ended, or could not take it and says why.
    func settled(_ id: String) {
        if let made = small.removeValue(forKey: id) { keep(made) }
        guard queue.contains(where: { $0.id == id }) else { return }
        camera.stop()
        queue.removeAll { $0.id == id }
        to(.choose, nil)
    }

    /// The place for a photograph: only where it was allowed before, and without keeping anybody waiting.
    static func atHand(_ place: any PlaceSource) async -> PlaceFix? {
        guard await place.permission() == .given else { return nil }
        return try? await place.fix(withinMs: placePatienceMs)
    }

    /// Puts a small picture beside an original of which the core could make none.
    private func keep(_ made: Thumbnail) {
        Task { [door] in
            try? await door.call { door, _ in
                let path = door.previewPath(digest: made.digest)
                guard !FileManager.default.fileExists(atPath: path) else { return }
                try Incoming.put(made.jpeg, at: path)
            }
        }
    }

    private func to(_ stage: Stage, _ problem: Trouble?) {
        self.stage = stage
        self.problem = problem
    }
}
