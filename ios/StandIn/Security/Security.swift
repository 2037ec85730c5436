// Stand-in for Apple's Security (and the Core Foundation names that it is called with), for Linux only: see StandIn/UIKit.
import Foundation

public typealias OSStatus = Int32
public typealias CFTypeRef = AnyObject
public typealias CFDictionary = NSDictionary
// On Apple a CFString that `as String` bridges; there it is handed on as any object.
public typealias CFString = String
public final class CFAllocator {}
public final class CFError {}

public final class SecAccessControl: @unchecked Sendable {}
public struct SecAccessControlCreateFlags: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
    public static let privateKeyUsage = SecAccessControlCreateFlags(rawValue: 1 << 30)
}

public let kSecClass: CFString = ""
public let kSecClassGenericPassword: CFString = ""
public let kSecAttrService: CFString = ""
public let kSecAttrAccessible: CFString = ""
public let kSecAttrAccessibleAfterFirstUnlockThisDeviceOnly: CFString = ""
public let kSecValueData: CFString = ""
public let kSecReturnData: CFString = ""
public let errSecSuccess: OSStatus = 0
public let errSecItemNotFound: OSStatus = -25300

public func SecAccessControlCreateWithFlags(
    _ allocator: CFAllocator?, _ protection: CFString, _ flags: SecAccessControlCreateFlags, _ error: UnsafeMutablePointer<Unmanaged<CFError>?>?
) -> SecAccessControl? { nil }
public func SecItemAdd(_ attributes: CFDictionary, _ result: UnsafeMutablePointer<CFTypeRef?>?) -> OSStatus { 0 }
public func SecItemCopyMatching(_ query: CFDictionary, _ result: UnsafeMutablePointer<CFTypeRef?>?) -> OSStatus { 0 }
