import CoilsideKit
import Foundation

/// What this device lends to the Kit.
@MainActor
final class PhoneGround {
    /// The name under which the system keeps what goes on in the app's sleep.
    static let background = "coilside.sending"

    let camera = PhoneCamera()
    let ground: Ground
    let transport: URLSessionTransport

    init() throws {
        let files = FileManager.default
        let support = try files.url(for: .applicationSupportDirectory, in: .userDomainMask, appropriateFor: nil, create: true)
        let folder = support.appendingPathComponent("Coilside", isDirectory: true)
        try files.createDirectory(at: folder, withIntermediateDirectories: true)
        let home = Home(folder: folder)
        // Beside the app in the Files app, for whoever has packs of their own.
        let packs = try files.url(for: .documentDirectory, in: .userDomainMask, appropriateFor: nil, create: true)
        ground = Ground(
            folder: folder, packs: packs, clock: DeviceClock(kept: home.boot), signer: EnclaveSigner(), place: PhonePlace(), camera: camera,
            bell: PhoneBell(), language: Locale.current.language.languageCode?.identifier, thumbnail: { SmallPicture.of($0) })
        transport = URLSessionTransport(slices: home.slices, background: Self.background, name: "coilside-ios")
    }
}
