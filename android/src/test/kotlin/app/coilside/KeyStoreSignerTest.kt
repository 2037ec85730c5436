package app.coilside

import android.content.pm.PackageManager
import android.os.Build
import android.security.keystore.KeyGenParameterSpec
import android.security.keystore.KeyProperties
import android.security.keystore.StrongBoxUnavailableException
import java.io.InputStream
import java.io.OutputStream
import java.security.Key
import java.security.KeyPair
import java.security.KeyPairGenerator
import java.security.KeyPairGeneratorSpi
import java.security.KeyFactory
import java.security.KeyStoreSpi
import java.security.Provider
import java.security.ProviderException
import java.security.PublicKey
import java.security.SecureRandom
import java.security.Security
import java.security.Signature
import java.security.cert.Certificate
import java.security.interfaces.ECPublicKey
import java.security.spec.AlgorithmParameterSpec
import java.security.spec.ECGenParameterSpec
import java.security.spec.ECPoint
import java.security.spec.ECPublicKeySpec
import java.util.Collections
import java.util.Date
import java.util.Enumeration
import java.math.BigInteger
import org.junit.After
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config

/** The real signer asks the platform's key store for what it needs, and for nothing more. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = android.app.Application::class)
class KeyStoreSignerTest {
    private val app get() = RuntimeEnvironment.getApplication()

    @Before
    fun register() {
        Hardware.keys.clear()
        Hardware.asked.clear()
        Hardware.chipSays = null
        Security.addProvider(Hardware())
    }

    @After
    fun remove() = Security.removeProvider(Hardware.NAME)

    @Test
    fun `a P-256 key is made once, for signing with SHA-256, and nobody need be present`() {
        val first = KeyStoreSigner.ofThisDevice(app).publicKey
        assertArrayEquals("the same key at the next start", first, KeyStoreSigner.ofThisDevice(app).publicKey)
        val asked = Hardware.asked.single()
        assertEquals("secp256r1", (asked.algorithmParameterSpec as ECGenParameterSpec).name)
        assertEquals(KeyProperties.PURPOSE_SIGN, asked.purposes)
        assertEquals(listOf(KeyProperties.DIGEST_SHA256), asked.digests.toList())
        assertEquals(false, asked.isUserAuthenticationRequired)
    }

    @Test
    fun `what it signs holds under the public key that it tells`() {
        val signer = KeyStoreSigner.ofThisDevice(app)
        val public = signer.publicKey
        assertEquals(65, public.size)
        assertEquals(4, public[0].toInt())
        val curve = (Hardware.keys.values.single().public as ECPublicKey).params
        val point = ECPoint(BigInteger(1, public.copyOfRange(1, 33)), BigInteger(1, public.copyOfRange(33, 65)))
        val key = KeyFactory.getInstance("EC").generatePublic(ECPublicKeySpec(point, curve))
        val signature = signer.sign("what is sealed".toByteArray())
        fun holds(text: String) = Signature.getInstance("SHA256withECDSA").run {
            initVerify(key)
            update(text.toByteArray())
            verify(signature)
        }
        assertTrue(holds("what is sealed"))
        assertEquals(false, holds("what is changed"))
    }

    @Test
    fun `a coordinate that begins with zeros keeps its length`() {
        // One key in 128 has one; each coordinate must be there with its 32 bytes.
        repeat(600) {
            Hardware.keys.clear()
            assertEquals(65, KeyStoreSigner.ofThisDevice(app).publicKey.size)
        }
    }

    @Test
    @Config(sdk = [34])
    fun `a separate chip is asked first where the phone has one`() {
        shadowOf(app.packageManager).setSystemFeature(PackageManager.FEATURE_STRONGBOX_KEYSTORE, true)
        KeyStoreSigner.ofThisDevice(app)
        assertEquals(listOf(true), Hardware.asked.map { it.isStrongBoxBacked })
    }

    @Test
    @Config(sdk = [34])
    fun `a separate chip that refuses the key leaves it to the phone's ordinary store, and it signs`() {
        shadowOf(app.packageManager).setSystemFeature(PackageManager.FEATURE_STRONGBOX_KEYSTORE, true)
        for (why in listOf(StrongBoxUnavailableException("full"), ProviderException("the chip does not answer"))) {
            Hardware.keys.clear()
            Hardware.asked.clear()
            Hardware.chipSays = why
            val signer = KeyStoreSigner.ofThisDevice(app)
            assertEquals(listOf(true, false), Hardware.asked.map { it.isStrongBoxBacked })
            val holds = Signature.getInstance("SHA256withECDSA").run {
                initVerify(Hardware.keys.values.single().public)
                update("what is sealed".toByteArray())
                verify(signer.sign("what is sealed".toByteArray()))
            }
            assertTrue(holds)
        }
    }

    /** Stands in for the phone's hardware: the same services under the same names. */
    class Hardware : Provider(NAME, 1.0, "stands in for a phone's key store") {
        init {
            put("KeyStore.$NAME", Store::class.java.name)
            put("KeyPairGenerator.EC", Generator::class.java.name)
        }

        companion object {
            const val NAME = "AndroidKeyStore"
            val keys = HashMap<String, KeyPair>()
            val asked = ArrayList<KeyGenParameterSpec>()

            /** Why the separate chip makes no key; none where it does. */
            var chipSays: RuntimeException? = null
        }
    }

    class Generator : KeyPairGeneratorSpi() {
        override fun initialize(size: Int, random: SecureRandom?) = error("a curve must be named")

        override fun initialize(spec: AlgorithmParameterSpec, random: SecureRandom?) {
            Hardware.asked += spec as KeyGenParameterSpec
        }

        override fun generateKeyPair(): KeyPair {
            val asked = Hardware.asked.last()
            if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P && asked.isStrongBoxBacked) Hardware.chipSays?.let { throw it }
            val software = Security.getProviders("KeyPairGenerator.EC").first { it.name != Hardware.NAME }
            val pair = KeyPairGenerator.getInstance("EC", software).apply { initialize(ECGenParameterSpec("secp256r1")) }.generateKeyPair()
            Hardware.keys[asked.keystoreAlias] = pair
            return pair
        }
    }

    class Store : KeyStoreSpi() {
        override fun engineGetKey(alias: String, password: CharArray?): Key? = Hardware.keys[alias]?.private

        override fun engineGetCertificate(alias: String): Certificate? = Hardware.keys[alias]?.let { Shown(it.public) }

        override fun engineContainsAlias(alias: String) = alias in Hardware.keys

        override fun engineLoad(stream: InputStream?, password: CharArray?) = Unit

        override fun engineAliases(): Enumeration<String> = Collections.enumeration(Hardware.keys.keys)

        override fun engineSize() = Hardware.keys.size

        override fun engineIsKeyEntry(alias: String) = alias in Hardware.keys

        override fun engineIsCertificateEntry(alias: String) = false

        override fun engineGetCertificateChain(alias: String): Array<Certificate>? = null

        override fun engineGetCreationDate(alias: String): Date? = null

        override fun engineGetCertificateAlias(certificate: Certificate): String? = null

        override fun engineSetKeyEntry(alias: String, key: Key, password: CharArray?, chain: Array<out Certificate>?) = error("no key is brought in")

        override fun engineSetKeyEntry(alias: String, key: ByteArray, chain: Array<out Certificate>?) = error("no key is brought in")

        override fun engineSetCertificateEntry(alias: String, certificate: Certificate) = error("no certificate is brought in")

        override fun engineDeleteEntry(alias: String) = error("no key is deleted")

        override fun engineStore(stream: OutputStream?, password: CharArray?) = error("nothing is written out")
    }

    private class Shown(private val key: PublicKey) : Certificate("X.509") {
        override fun getPublicKey() = key

        override fun getEncoded() = ByteArray(0)

        override fun verify(key: PublicKey) = Unit

        override fun verify(key: PublicKey, provider: String) = Unit

        override fun toString() = "shown"
    }
}
