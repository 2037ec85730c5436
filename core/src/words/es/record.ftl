# El archivo del registro: lo que dice su comprobación, y el LÉAME que lleva dentro.

record-visit = Visita { $visit }: { $events } sucesos, { $photographs } fotografías; escrita al final con la clave del dispositivo { $key }.
record-zip = Cada byte del archivo está justificado: es un solo ZIP, y no hay nada al lado ni entre sus archivos.
record-chain = Cada suceso sigue al anterior.
record-files = Cada fotografía, cada procedimiento y cada otro archivo es lo que era.
record-seal = El sello es válido: la clave del dispositivo firmó { $events } sucesos el { $when }.
record-addendum = La firma { $number } es válida: la clave del dispositivo firmó añadidos, { $events } sucesos en total, el { $when }.
record-complete = Según el sello, el registro está completo.
record-incomplete = Según el sello, el registro está incompleto. Dice qué falta y por qué:
record-anchor = Responde de él la oficina con la clave { $key }: la clave del dispositivo se inscribió en ella el { $joined }, y recibió el sello sobre { $events } sucesos el { $received }. Último suceso: { $last }
record-anchor-receipt = Responde de él la oficina con la clave { $key }: recibió el sello sobre { $events } sucesos el { $received }; el dispositivo se inscribió en otra oficina. Último suceso: { $last }
record-anchor-none = Ninguna oficina responde de él. Cualquiera puede hacer una clave, firmar con ella e incluirla.
record-anchor-unknown = Claves de oficina incluidas: { $keys }. Si son las de las oficinas, el archivo no puede mostrarlo: pida a la oficina su clave e indíquela con --office-key.
record-not-enclosed = Esa oficina no firmó README.txt, palabras ni claves; el sello cubre los sucesos, las fotografías y los procedimientos.
record-personal = Los datos del dueño y del lugar están incluidos, y son los de la visita.
record-no-personal = Los datos del dueño y del lugar no están incluidos. El registro es válido sin ellos.
record-customer = El nombre y la firma del cliente están incluidos y son lo que se selló.
record-customer-withheld = El cliente dio un nombre o una firma en el lugar; se han retenido. El registro es válido sin ellos.
record-holds = ES VÁLIDO.
record-self-consistent = SOLO COHERENTE CONSIGO MISMO: el registro concuerda consigo mismo. Ninguna oficina que usted haya nombrado responde de él.
record-fails = NO ES VÁLIDO. Defectos: { $n }; véase arriba.

record-fault-zip-none = Esto no es un archivo de registro: en el byte { $at } no empieza ningún archivo como debe en un ZIP.
record-fault-zip-short = El archivo del registro termina antes de tiempo, en { $part } o detrás, en el byte { $at }: el resto se perdió.
record-fault-zip-lost = Detrás de { $part }, en el byte { $at }, no empieza ni un archivo ni la lista de archivos: allí se puso, se quitó o se alteró algo.
record-fault-zip-many = El archivo del registro contiene más archivos de los que puede tener un registro; desde el byte { $at } no se leyó nada.
record-fault-zip-head = Se alteró lo que el ZIP dice delante de { $part }, desde el byte { $at }.
record-fault-zip-compressed = { $part }, en el byte { $at }, está comprimido o indica dos longitudes. En un registro no hay nada comprimido; no se desempaquetó.
record-fault-zip-name = { $part }, en el byte { $at }, tiene un nombre que no tiene ningún archivo de un registro. No desempaquete este archivo.
record-fault-zip-twice = { $part } está dos veces, de nuevo en el byte { $at }.
record-fault-zip-order = { $part }, en el byte { $at }, no está en su sitio, o se alteró su nombre.
record-fault-zip-crc = Se alteraron los bytes de { $part }, o su suma de control en el ZIP, desde el byte { $at }.
record-fault-zip-list = Se alteró la lista de archivos del ZIP en el byte { $at }, donde habla de { $part }.
record-fault-zip-end = Se alteró el final del ZIP en el byte { $at }.
record-fault-zip-after = Se puso algo detrás del final del ZIP, en el byte { $at }.
record-fault-too-large = { $part } es más largo de lo que puede ser en un registro; no se leyó.
record-fault-no-file = Falta { $part }.
record-fault-not-in-record = { $part } no pertenece al registro: nada en él nombra ese archivo.
record-fault-sum = Se alteró { $part }: no es lo que dice SHA256SUMS.
record-fault-sums-line = Se alteró la línea de { $name } en SHA256SUMS.
record-fault-sums-none = SHA256SUMS no tiene línea para { $part }: se puso el archivo, o se quitó o alteró la línea.
record-fault-sums-form = Se alteró SHA256SUMS: ya no es una lista de huellas.
record-fault-unreadable = Se alteró { $part } y ya no se puede leer: { $why }
record-fault-later = { $part } es de la forma { $format }, que esta versión no conoce. Use una versión más nueva del programa.
record-fault-not-canonical = Se reescribió { $part }: sus bytes no están en forma canónica.
record-fault-event-unreadable = Se alteró el suceso { $seq }: ya no se puede leer.
record-fault-event-foreign = El suceso { $seq } pertenece a otra visita ({ $visit }).
record-fault-event-missing = Faltan sucesos: del { $seq } al { $to }.
record-fault-event-order = En el sitio del suceso { $seq } hay uno con el número { $found }: se puso, se duplicó o se movió.
record-fault-event-altered = Se alteró el suceso { $seq }.
record-fault-no-key = El primer suceso no nombra la clave de ningún dispositivo, y así no se puede comprobar ningún sello.
record-fault-no-seal = El registro no está sellado.
record-fault-seal-unreadable = Se alteró el sello { $number }: { $why }.
record-fault-seal-foreign = El sello { $number } se hizo con una clave ajena ({ $key }). El último dispositivo de la visita tiene la clave { $device }.
record-fault-seal-signature = La firma del sello { $number } no es válida: se alteró el sello.
record-fault-seal-visit = El sello { $number } es de otra visita ({ $visit }).
record-fault-seal-order = El sello { $number } no cubre más sucesos que el anterior: se duplicó o se movió.
record-fault-seal-other = El sello { $number } trata de otros sucesos que los del registro.
record-fault-seal-list = El sello { $number } dice otra cosa que los sucesos sobre lo que falta.
record-fault-after-seal = El suceso { $seq } vino después del sello y no es un añadido.
record-fault-unsealed = Ningún sello cubre los sucesos del { $seq } al { $to }: se pusieron después.
record-fault-photo-missing = Falta la fotografía { $part } del suceso { $seq }.
record-fault-photo-altered = Se alteró o se cambió la fotografía { $part } del suceso { $seq }: no es la que se tomó.
record-fault-photo-length = La fotografía { $part } tiene otra longitud que la que dice el suceso { $seq }.
record-fault-pack-missing = Falta el procedimiento { $part } del suceso { $seq }.
record-fault-pack-altered = Se alteró el procedimiento { $part } del suceso { $seq }.
record-fault-key-file = { $part } no es la clave que nombra el registro.
record-fault-personal = Se alteró { $part }: no son los datos del dueño y del lugar de la visita.
record-fault-customer-altered = El nombre y la firma del cliente, { $part } del suceso { $seq }, se alteraron: no son lo que se selló.
record-fault-office-key = La clave de la oficina { $number } no es una clave.
record-fault-certificate = Lo que la oficina { $number } dice del dispositivo no es válido: { $why }.
record-fault-certificate-other = La oficina { $number } responde de otro dispositivo (clave { $key }) que el que hizo el registro (clave { $device }).
record-fault-receipt = Un recibo de la oficina { $number } no es válido: { $why }.
record-fault-receipt-other = Un recibo de la oficina { $number } trata de otro estado del registro, con { $events } sucesos.
record-fault-enclosed = Se alteró { $part }, o no lo firmó ninguna de las oficinas que nombra el registro.
record-fault-enclosed-other = { $part } trata de otros archivos que los incluidos: SHA256SUMS se rehízo después de que firmara la oficina.
record-fault-no-anchor = Ninguna oficina que usted haya nombrado (claves { $keys }) responde de este registro. Puede haberlo hecho cualquiera.

record-readme =
    CÓMO COMPROBAR ESTE REGISTRO SIN NOSOTROS

    Este es el registro sellado de una visita a una bomba de calor. Se hizo para que nadie tenga que creernos: con las
    órdenes de abajo, una biblioteca JOSE corriente y cualquier herramienta de SHA-256 puede comprobar que nada cambió en
    él desde que se selló. No necesita ningún programa nuestro ni conexión.
record-readme-files =
    QUÉ CONTIENE

    record.json    los sucesos en orden, cada uno como el texto que se selló; los sellos; lo que dicen las oficinas
    photographs/   cada fotografía como la escribió la cámara, nombrada por su SHA-256; puede decir el lugar exacto
    packs/         el procedimiento que se siguió, con sus palabras en inglés y español, nombrado por su SHA-256
    words/         las palabras de los hechos y peligros que están en los sucesos
    keys/          claves públicas (RFC 7517): del dispositivo que selló el registro y de las oficinas que responden de él
    SHA256SUMS     el SHA-256 de cada archivo, menos él mismo y office.jws
    office.jws     la firma de la oficina que escribió este archivo, sobre SHA256SUMS; no está si lo escribió un dispositivo
    personal.json  nombre y dirección, solo donde se pueden dar; el registro es válido sin ellos
    customer/      nombre y firma del cliente, si los dio y se pueden dar; el registro es válido sin ellos
record-readme-how =
    CÓMO SE HACE

    Desempaquete el archivo en una carpeta vacía y abra allí una terminal. Hacen falta Python 3 y la biblioteca jwcrypto:
    «pip install jwcrypto». La orden de abajo ejecuta las líneas sangradas de los cinco pasos, y nada más. El paso que es
    válido lo dice. Si uno se detiene con un error, su última línea dice qué se alteró.
    Estas líneas vinieron con el registro, y un falsificador podría haber enviado otras: léalas antes, son pocas, o haga
    lo que dicen los pasos con sus propias herramientas. Sirve igual cualquier otra biblioteca JOSE: los sellos son JWS
    compactos (RFC 7515) firmados con ES256.
record-readme-sums =
    PASO 1: los archivos están todos y sin alterar. «sha256sum --check SHA256SUMS» hace lo mismo.
record-readme-chain =
    PASO 2: cada suceso lleva el SHA-256 del anterior; así ninguno se puede cambiar, quitar ni añadir.
record-readme-seal =
    PASO 3: el dispositivo firmó el SHA-256 del último suceso y la lista de lo que falta, con la clave que había nombrado
    en el primer suceso o, si siguió en lugar de otro dispositivo, en el último suceso device-changed. Las firmas
    posteriores cubren añadidos.
record-readme-photographs =
    PASO 4: las fotografías y los procedimientos son los que nombran los sucesos, y también el nombre y la firma del
    cliente donde están incluidos.
record-readme-office =
    PASO 5: ¿quién responde de la clave del dispositivo? Los pasos 1 a 4 muestran que el registro concuerda consigo mismo,
    y también podría lograrlo un falsificador con su propia clave. Una oficina dice, con su propia clave, cuándo se
    inscribió en ella ese dispositivo y cuándo recibió el sello. Pida a la oficina su clave por un camino en el que confíe,
    por teléfono por ejemplo, y compárela con la que muestra este paso.
record-readme-limits =
    LO QUE ESTO NO MUESTRA

    Que lo escrito fuera verdad cuando se escribió. El sello muestra que no se cambió después, y con qué dispositivo y
    cuándo se selló.
