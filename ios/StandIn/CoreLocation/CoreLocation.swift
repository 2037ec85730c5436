// Stand-in for Apple's CoreLocation, for Linux only: see StandIn/UIKit.
import Foundation

public typealias CLLocationDegrees = Double
public typealias CLLocationAccuracy = Double
public struct CLLocationCoordinate2D: Sendable { public var latitude: CLLocationDegrees; public var longitude: CLLocationDegrees }
open class CLLocation: NSObject, @unchecked Sendable {
    open var coordinate: CLLocationCoordinate2D { fatalError() }
    open var horizontalAccuracy: CLLocationAccuracy { fatalError() }
    open var timestamp: Date { fatalError() }
}
public enum CLAuthorizationStatus: Int32, Sendable { case notDetermined, restricted, denied, authorizedAlways, authorizedWhenInUse }
open class CLLocationManager: NSObject {
    public override init() {}
    open var authorizationStatus: CLAuthorizationStatus { fatalError() }
    open func requestWhenInUseAuthorization() {}
}
public struct CLLocationUpdate: Sendable {
    public struct Updates: AsyncSequence, Sendable {
        public typealias Element = CLLocationUpdate
        public struct AsyncIterator: AsyncIteratorProtocol { public mutating func next() async throws -> CLLocationUpdate? { nil } }
        public func makeAsyncIterator() -> AsyncIterator { fatalError() }
    }
    public static func liveUpdates() -> Updates { fatalError() }
    public let location: CLLocation?
}
