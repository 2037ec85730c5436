// Stand-in for Apple's WebKit, for Linux only: see StandIn/UIKit.
import Foundation
import UIKit

@MainActor @preconcurrency open class WKWebpagePreferences: NSObject { open var allowsContentJavaScript: Bool { get { fatalError() } set {} } }
@MainActor @preconcurrency open class WKWebViewConfiguration: NSObject {
    public override init() {}
    open var defaultWebpagePreferences: WKWebpagePreferences! { get { fatalError() } set {} }
}
@MainActor @preconcurrency open class WKNavigation: NSObject {}
open class WKWebView: UIView {
    public init(frame: CGRect, configuration: WKWebViewConfiguration) { super.init(frame: frame) }
    @discardableResult open func loadFileURL(_ URL: URL, allowingReadAccessTo readAccessURL: URL) -> WKNavigation? { nil }
}
