import CoilsideCore
import CoilsideKit
import CryptoKit
import Foundation
import Network
import UIKit

/// Over what requests go.
final class NetworkWatch: Sendable {
    private let monitor = NWPathMonitor()

    /// Tells it now and whenever it changes.
    func start(_ told: @escaping @Sendable (CoilsideCore.Link) -> Void) {
        monitor.pathUpdateHandler = { path in
            told(path.status != .satisfied ? .none : path.isExpensive || path.isConstrained ? .metered : .unmetered)
        }
        monitor.start(queue: DispatchQueue(label: "coilside.network"))
    }
}

/// How much charge is left.
@MainActor enum Charge {
    /// Per cent; none while it charges or where nobody knows.
    static var percent: UInt8? {
        let device = UIDevice.current
        device.isBatteryMonitoringEnabled = true
        guard device.batteryState == .unplugged, device.batteryLevel >= 0 else { return nil }
        return UInt8((device.batteryLevel * 100).rounded())
    }
}

/// Small pictures of originals that the core cannot decode: what the library has from an iPhone's camera.
enum SmallPicture {
    /// The longer side, points.
    private static let side: CGFloat = 480

    static func of(_ bytes: Data) -> Thumbnail? {
        // ISO/IEC 14496-12: a box 'ftyp' at the begin.
        guard bytes.dropFirst(4).prefix(4) == Data("ftyp".utf8), let image = UIImage(data: bytes) else { return nil }
        let scale = min(1, side / max(image.size.width, image.size.height, 1))
        let size = CGSize(width: image.size.width * scale, height: image.size.height * scale)
        guard let jpeg = image.preparingThumbnail(of: size)?.jpegData(compressionQuality: 0.8) else { return nil }
        let digest = SHA256.hash(data: bytes).map { byte in (byte < 16 ? "0" : "") + String(byte, radix: 16) }.joined()
        return Thumbnail(digest: digest, jpeg: jpeg)
    }
}
