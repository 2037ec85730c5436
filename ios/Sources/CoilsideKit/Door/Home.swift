import CoilsideCore
import Foundation

/// The folders of one device, and the opening of what lies in them.
public struct Home: Sendable {
    /// Where everything lies.
    public let folder: URL

    /// The core's own folder.
    public var core: URL { folder.appendingPathComponent("core", isDirectory: true) }
    /// Parts of files on their way to the office.
    public var slices: URL { folder.appendingPathComponent("slices", isDirectory: true) }
    /// What is handed over to other apps: written anew each time.
    public var handover: URL { folder.appendingPathComponent("handover", isDirectory: true) }
    /// The boot as it was last seen.
    public var boot: URL { folder.appendingPathComponent("boot.json") }

    /// The shell's words of the last start.
    public var words: URL { folder.appendingPathComponent("words.json") }

    /// The home in a folder.
    public init(folder: URL) { self.folder = folder }

    /// Opens the core, or begins there.
    ///
    /// Throws the core's `DoorFault`, the signer's error where there is no key, or the file system's.
    public func open(_ ground: Ground) throws -> Door {
        for each in [core, slices, handover] {
            try FileManager.default.createDirectory(at: each, withIntermediateDirectories: true)
        }
        let setup = DoorSetup(
            folder: core.path, entropy: Self.entropy(), now: ground.clock.now(), language: ground.language,
            publicKey: try ground.signer.publicKey())
        return try Door.open(setup: setup)
    }

    /// 32 fresh bytes of the system's generator, which is fit for keys.
    static func entropy() -> Data {
        var system = SystemRandomNumberGenerator()
        return Data((0..<32).map { _ in UInt8.random(in: .min ... .max, using: &system) })
    }
}
