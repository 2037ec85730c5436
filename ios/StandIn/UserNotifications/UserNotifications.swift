// Stand-in for Apple's UserNotifications, for Linux only: see StandIn/UIKit.
import Foundation

public enum UNAuthorizationStatus: Int, Sendable { case notDetermined, denied, authorized, provisional, ephemeral }
public struct UNAuthorizationOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
    public static let sound = Self(rawValue: 2), alert = Self(rawValue: 4)
}
public struct UNNotificationPresentationOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
    public static let sound = Self(rawValue: 2), banner = Self(rawValue: 16)
}
public enum UNNotificationInterruptionLevel: UInt, Sendable { case passive, active, timeSensitive, critical }
open class UNNotificationSound: NSObject, @unchecked Sendable { public class var `default`: UNNotificationSound { fatalError() } }
open class UNNotificationContent: NSObject, @unchecked Sendable {}
open class UNMutableNotificationContent: UNNotificationContent, @unchecked Sendable {
    public override init() {}
    open var title: String { get { fatalError() } set {} }
    open var sound: UNNotificationSound? { get { fatalError() } set {} }
    open var interruptionLevel: UNNotificationInterruptionLevel { get { fatalError() } set {} }
}
open class UNNotificationTrigger: NSObject, @unchecked Sendable {}
open class UNTimeIntervalNotificationTrigger: UNNotificationTrigger, @unchecked Sendable {
    public convenience init(timeInterval: TimeInterval, repeats: Bool) { fatalError() }
}
open class UNNotificationRequest: NSObject, @unchecked Sendable {
    public convenience init(identifier: String, content: UNNotificationContent, trigger: UNNotificationTrigger?) { fatalError() }
    open var identifier: String { fatalError() }
}
open class UNNotification: NSObject, @unchecked Sendable { open var request: UNNotificationRequest { fatalError() } }
open class UNNotificationSettings: NSObject, @unchecked Sendable { open var authorizationStatus: UNAuthorizationStatus { fatalError() } }
public protocol UNUserNotificationCenterDelegate: NSObjectProtocol {
    func userNotificationCenter(_ center: UNUserNotificationCenter, willPresent notification: UNNotification) async
        -> UNNotificationPresentationOptions
}
open class UNUserNotificationCenter: NSObject, @unchecked Sendable {
    open weak var delegate: (any UNUserNotificationCenterDelegate)? { get { fatalError() } set {} }
    open class func current() -> UNUserNotificationCenter { fatalError() }
    open func requestAuthorization(options: UNAuthorizationOptions = []) async throws -> Bool { fatalError() }
    open func notificationSettings() async -> UNNotificationSettings { fatalError() }
    open func add(_ request: UNNotificationRequest) async throws {}
    open func pendingNotificationRequests() async -> [UNNotificationRequest] { fatalError() }
    open func deliveredNotifications() async -> [UNNotification] { fatalError() }
    open func removePendingNotificationRequests(withIdentifiers identifiers: [String]) {}
    open func removeDeliveredNotifications(withIdentifiers identifiers: [String]) {}
}
