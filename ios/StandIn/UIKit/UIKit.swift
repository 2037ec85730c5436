// Stand-in for Apple's UIKit, for Linux only: the signatures that the app uses, so that its sources type-check. Nothing runs. Never looser
// than Apple's: a gap here only fails the check, an extra here would let through what Xcode refuses.
@_exported import Foundation

@MainActor @preconcurrency open class UIView: NSObject {
    public init(frame: CGRect) {}
    public var layer: CALayer { fatalError() }
    public var bounds: CGRect { get { fatalError() } set {} }
    public var clipsToBounds: Bool { get { fatalError() } set {} }
    open func layoutSubviews() {}
}

open class CALayer: NSObject {
    public override init() {}
    open func addSublayer(_ layer: CALayer) {}
    open var frame: CGRect { get { fatalError() } set {} }
}

public enum UIUserInterfaceStyle: Int, Sendable { case unspecified, light, dark }
public enum UIAccessibilityContrast: Int, Sendable { case unspecified = -1, normal, high }
public final class UITraitCollection: NSObject {
    public var userInterfaceStyle: UIUserInterfaceStyle { fatalError() }
    public var accessibilityContrast: UIAccessibilityContrast { fatalError() }
}

open class UIColor: NSObject, @unchecked Sendable {
    public init(dynamicProvider: @escaping @Sendable (UITraitCollection) -> UIColor) {}
    public init(red: CGFloat, green: CGFloat, blue: CGFloat, alpha: CGFloat) {}
}

open class UIImage: NSObject, @unchecked Sendable {
    public init?(contentsOfFile path: String) { nil }
    public init?(data: Data) { nil }
    open var size: CGSize { fatalError() }
    open func preparingThumbnail(of size: CGSize) -> UIImage? { nil }
    open func jpegData(compressionQuality: CGFloat) -> Data? { nil }
}

public struct UIBackgroundTaskIdentifier: Hashable, RawRepresentable, Sendable {
    public let rawValue: Int
    public init(rawValue: Int) { self.rawValue = rawValue }
    public static let invalid = UIBackgroundTaskIdentifier(rawValue: 0)
}

@MainActor @preconcurrency open class UIApplication: NSObject {
    public struct LaunchOptionsKey: Hashable, RawRepresentable, Sendable {
        public let rawValue: String
        public init(rawValue: String) { self.rawValue = rawValue }
    }
    public class var shared: UIApplication { fatalError() }
    public nonisolated class var openSettingsURLString: String { fatalError() }
    open var isIdleTimerDisabled: Bool { get { fatalError() } set {} }
    open var backgroundTimeRemaining: TimeInterval { fatalError() }
    open func beginBackgroundTask(expirationHandler handler: (@MainActor @Sendable () -> Void)? = nil) -> UIBackgroundTaskIdentifier { fatalError() }
    open func endBackgroundTask(_ identifier: UIBackgroundTaskIdentifier) {}
}

// Apple's methods are optional ones of Objective-C: whoever misspells one here is not told. Their names stand in the README's list.
@MainActor @preconcurrency public protocol UIApplicationDelegate: NSObjectProtocol {
    func application(_ application: UIApplication, didFinishLaunchingWithOptions launchOptions: [UIApplication.LaunchOptionsKey: Any]?) -> Bool
    func application(
        _ application: UIApplication, handleEventsForBackgroundURLSession identifier: String, completionHandler: @escaping () -> Void)
}

@MainActor @preconcurrency open class UIDevice: NSObject {
    public enum BatteryState: Int, Sendable { case unknown, unplugged, charging, full }
    public class var current: UIDevice { fatalError() }
    open var name: String { fatalError() }
    open var isBatteryMonitoringEnabled: Bool { get { fatalError() } set {} }
    open var batteryState: BatteryState { fatalError() }
    open var batteryLevel: Float { fatalError() }
}

@MainActor @preconcurrency open class UIPrintFormatter: NSObject {}
open class UIMarkupTextPrintFormatter: UIPrintFormatter { public init(markupText: String) {} }
@MainActor @preconcurrency open class UIPrintInteractionController: NSObject {
    public typealias CompletionHandler = (UIPrintInteractionController, Bool, (any Error)?) -> Void
    public class var shared: UIPrintInteractionController { fatalError() }
    open var printFormatter: UIPrintFormatter? { get { fatalError() } set {} }
    @discardableResult open func present(animated: Bool, completionHandler completion: CompletionHandler?) -> Bool { fatalError() }
}
