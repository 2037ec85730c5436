import CoilsideKit
import Foundation
import UserNotifications

/// Calls the person by messages of the system.
final class PhoneBell: NSObject, Bell, UNUserNotificationCenterDelegate, @unchecked Sendable {
    private let center = UNUserNotificationCenter.current()

    override init() {
        super.init()
        center.delegate = self
    }

    func permission() async -> Permission {
        switch await center.notificationSettings().authorizationStatus {
        case .authorized, .provisional, .ephemeral: .given
        case .notDetermined: .notAsked
        case .denied: .denied
        @unknown default: .denied
        }
    }

    func ask() async -> Permission {
        (try? await center.requestAuthorization(options: [.alert, .sound])) == true ? .given : await permission()
    }

    func set(id: String, atUtcMs: Int64, text: String) async {
        let content = UNMutableNotificationContent()
        content.title = text
        content.sound = .default
        content.interruptionLevel = .timeSensitive
        let left = Double(atUtcMs) / 1000 - Date().timeIntervalSince1970
        let trigger = UNTimeIntervalNotificationTrigger(timeInterval: max(1, left), repeats: false)
        // Turned down where the person does not allow it: then it rings while the app is open, and the screen says so.
        try? await center.add(UNNotificationRequest(identifier: id, content: content, trigger: trigger))
    }

    func ids() async -> [String] {
        let waiting = await center.pendingNotificationRequests().map(\.identifier)
        return waiting + (await center.deliveredNotifications()).map(\.request.identifier)
    }

    func remove(ids: [String]) async {
        center.removePendingNotificationRequests(withIdentifiers: ids)
        center.removeDeliveredNotifications(withIdentifiers: ids)
    }

    /// Heard also while the app is open.
    func userNotificationCenter(
        _ center: UNUserNotificationCenter, willPresent notification: UNNotification
    ) async -> UNNotificationPresentationOptions { [.banner, .sound] }
}
