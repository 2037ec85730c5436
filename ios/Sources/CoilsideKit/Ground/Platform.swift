import CoilsideCore
import Foundation

/// Whether a person lets the app use something.
public enum Permission: Sendable, Equatable {
    /// Yes.
    case given
    /// No, and only the system's settings can change it.
    case denied
    /// Nobody was asked yet.
    case notAsked
    /// This device has no such thing.
    case none
}

/// Why there is no place.
public enum PlaceProblem: Error, Sendable, Equatable {
    /// The person turned it down.
    case denied
    /// No fix within the time.
    case late
    /// The device cannot tell.
    case none
}

/// Tells where the device is.
public protocol PlaceSource: Sendable {
    /// Whether it may be asked without a question to the person.
    func permission() async -> Permission
    /// A fix no older than a minute, within a time in milliseconds. May ask the person for leave.
    func fix(withinMs: Int64) async throws -> PlaceFix
}

/// Why there is no picture.
public enum CameraProblem: Error, Sendable, Equatable {
    /// The person turned the camera down.
    case denied
    /// There is none, or another program has it.
    case none
}

/// Takes pictures.
public protocol Camera: AnyObject, Sendable {
    /// Asks the person where needed, and shows what the camera sees from now on.
    func start() async throws
    /// The picture's original bytes, as the camera's software wrote them.
    func shoot() async throws -> Data
    /// Lets the camera go.
    func stop()
}

/// Why the device's key cannot be used now, in the system's words.
public struct SignerProblem: Error, Sendable, Equatable {
    /// The system's words.
    public let detail: String

    /// Puts it together.
    public init(_ detail: String) { self.detail = detail }
}

/// Holds the device's P-256 key. The private half never leaves it.
public protocol Signer: Sendable {
    /// The public half: SEC 1, uncompressed, 65 bytes. Makes the key at the first call.
    func publicKey() throws -> Data
    /// ECDSA with SHA-256 over the bytes, in DER or as raw r‖s. May ask the person to unlock the device.
    func sign(_ bytes: Data) async throws -> Data
}

/// Calls the person at a time, also while the app sleeps or is gone.
public protocol Bell: Sendable {
    /// Whether messages of the system may be shown.
    func permission() async -> Permission
    /// Asks the person for leave.
    func ask() async -> Permission
    /// Sets a message for a moment, UTC milliseconds. The same id again takes its place.
    func set(id: String, atUtcMs: Int64, text: String) async
    /// The ids of messages that wait or stand on the screen.
    func ids() async -> [String]
    /// Takes messages back, those that wait and those that stand on the screen.
    func remove(ids: [String]) async
}

/// A small picture of an original that only the platform can decode.
public struct Thumbnail: Sendable, Equatable {
    /// SHA-256 of the original, lower-case hex.
    public let digest: String
    /// A small JPEG.
    public let jpeg: Data

    /// Puts them together.
    public init(digest: String, jpeg: Data) {
        self.digest = digest
        self.jpeg = jpeg
    }
}

/// What a device lends to the Kit.
public struct Ground: Sendable {
    /// Where everything lies; made if it is not there.
    public var folder: URL
    /// A folder of packs that the person fills, each folder in it one; none where there is no such folder.
    public var packs: URL?
    /// The clocks.
    public var clock: any Clock
    /// The key.
    public var signer: any Signer
    /// The place.
    public var place: any PlaceSource
    /// The camera.
    public var camera: any Camera
    /// The alarms.
    public var bell: any Bell
    /// The language of the device, where the person has chosen none: `en`, `es`.
    public var language: String?
    /// Makes the small picture of an original that the core cannot decode; none of one that it can.
    public var thumbnail: (@Sendable (Data) -> Thumbnail?)?

    /// Puts them together.
    public init(
        folder: URL, packs: URL?, clock: any Clock, signer: any Signer, place: any PlaceSource, camera: any Camera, bell: any Bell,
        language: String?, thumbnail: (@Sendable (Data) -> Thumbnail?)? = nil
    ) {
        self.folder = folder
        self.packs = packs
        self.clock = clock
        self.signer = signer
        self.place = place
        self.camera = camera
        self.bell = bell
        self.language = language
        self.thumbnail = thumbnail
    }
}
