import CoilsideCore
import CoilsideKit
import CoreLocation
import Foundation

/// Where the device is, if the person allows it.
final class PhonePlace: PlaceSource, @unchecked Sendable {
    /// How old a fix may be, seconds.
    private static let ageMost: TimeInterval = 60
    /// How long the person may think about the question, seconds.
    private static let thinkingMost = 60
    /// Made on the main thread, as the system wants it.
    private let manager: CLLocationManager

    @MainActor init() { manager = CLLocationManager() }

    func permission() async -> Permission {
        switch manager.authorizationStatus {
        case .authorizedAlways, .authorizedWhenInUse: .given
        case .notDetermined: .notAsked
        case .denied, .restricted: .denied
        @unknown default: .denied
        }
    }

    func fix(withinMs: Int64) async throws -> PlaceFix {
        if await permission() == .notAsked {
            await MainActor.run { manager.requestWhenInUseAuthorization() }
            for _ in 0..<(Self.thinkingMost * 5) where await permission() == .notAsked { try await Task.sleep(nanoseconds: 200_000_000) }
        }
        guard await permission() == .given else { throw PlaceProblem.denied }
        return try await withThrowingTaskGroup(of: PlaceFix?.self) { group in
            group.addTask { try await Self.first() }
            group.addTask {
                try await Task.sleep(nanoseconds: UInt64(withinMs) * 1_000_000)
                return nil
            }
            defer { group.cancelAll() }
            guard let first = try await group.next(), let fix = first else { throw PlaceProblem.late }
            return fix
        }
    }

    private static func first() async throws -> PlaceFix? {
        for try await update in CLLocationUpdate.liveUpdates() {
            guard let location = update.location, location.horizontalAccuracy >= 0 else { continue }
            let age = -location.timestamp.timeIntervalSinceNow
            guard age <= ageMost else { continue }
            return PlaceFix(
                latitudeDeg: location.coordinate.latitude, longitudeDeg: location.coordinate.longitude,
                accuracyM: location.horizontalAccuracy, ageMs: max(0, Int64(age * 1000)))
        }
        throw PlaceProblem.none
    }
}
